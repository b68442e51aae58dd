package app.sumpbook.ui.screen

import app.sumpbook.core.MainAct
import app.sumpbook.ui.desk.Act
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer

/** Goes where the core's main act of a unit leads. A walk is begun, and durable, before its first screen opens. */
fun goOn(act: Act, back: BackStack, signer: Signer, unit: String, main: MainAct) {
    when (main) {
        MainAct.StartPreTrip -> act.now({ phone.beginPreTrip(unit, signer.person, null) }) { back.go(Place.LastReport(unit, it)) }
        is MainAct.TakeOver -> act.now({ phone.beginShortPreTrip(unit, signer.person, main.after) }) { back.go(Place.LastReport(unit, it)) }
        is MainAct.GoOn -> back.go(walkOn(unit, main.draft, main.stop))
        is MainAct.ReportEndOfDay -> back.go(Place.EndOfDay(unit, main.draft.orEmpty()))
        else -> Unit
    }
}

/** Where a walk goes on: at its stop; before its first one at what the last one left. */
fun walkOn(unit: String, draft: String, stop: String?): Place =
    if (stop == null) Place.LastReport(unit, draft) else Place.Stop(unit, draft, stop)
