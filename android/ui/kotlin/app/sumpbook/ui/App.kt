package app.sumpbook.ui

import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.key
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.LocalCameBack
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.openAt
import app.sumpbook.ui.desk.stamp
import app.sumpbook.ui.desk.walkUnderWay
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.screen.AirForTheJob
import app.sumpbook.ui.screen.AnotherUnit
import app.sumpbook.ui.screen.Defect
import app.sumpbook.ui.screen.Display
import app.sumpbook.ui.screen.EndOfDay
import app.sumpbook.ui.screen.HandOver
import app.sumpbook.ui.screen.Happened
import app.sumpbook.ui.screen.Hours
import app.sumpbook.ui.screen.LastReport
import app.sumpbook.ui.screen.NotWhatISee
import app.sumpbook.ui.screen.OneGlass
import app.sumpbook.ui.screen.OneUnit
import app.sumpbook.ui.screen.OtherUnit
import app.sumpbook.ui.screen.OwnFiguresScreen
import app.sumpbook.ui.screen.Roadside
import app.sumpbook.ui.screen.Running
import app.sumpbook.ui.screen.SetAside
import app.sumpbook.ui.screen.SettingsScreen
import app.sumpbook.ui.screen.Sign
import app.sumpbook.ui.screen.Slip
import app.sumpbook.ui.screen.Steps
import app.sumpbook.ui.screen.Today
import app.sumpbook.ui.screen.TopUp
import app.sumpbook.ui.screen.Used
import app.sumpbook.ui.screen.WalkStop
import app.sumpbook.ui.screen.WhereItIs
import app.sumpbook.ui.screen.WhoSigns
import app.sumpbook.ui.words.OwnWay

/** The day of a phone that is set up: the screen of the place one is at. */
@Composable
fun App(desk: Desk, back: BackStack = rememberSaveable(saver = BackStack.Saver) { BackStack() }) {
    CompositionLocalProvider(LocalDesk provides desk, LocalBackStack provides back) {
        Opening(desk, back)
        EndOfShift(desk, back)
        val signer = back.signer
        // What a screen remembers is of its place: another stop begins anew.
        key(back.top) { if (signer == null) WhoSigns() else Screen(back.top, signer) }
    }
}

/** Once: a walk that was under way when the app was closed opens at its stop. */
@Composable
private fun Opening(desk: Desk, back: BackStack) {
    var done by rememberSaveable { mutableStateOf(false) }
    LaunchedEffect(desk) {
        if (done) return@LaunchedEffect
        val walk = (desk.ask(OwnWay()) { walkUnderWay() } as? Told.Got)?.it
        done = true
        if (walk != null && back.signer == null) back.openAt(walk, desk.handset.stamp())
    }
}

/** A name goes off this phone by itself when its shift is over: after a signed end of day, and when the app comes back much later. */
@Composable
private fun EndOfShift(desk: Desk, back: BackStack) {
    val signer = back.signer ?: return
    val since = back.since ?: return
    LaunchedEffect(desk, signer, since, LocalCameBack.current) {
        desk.changes.collect {
            val over = (desk.ask(OwnWay()) { phone.shiftIsOver(signer.person, since) } as? Told.Got)?.it
            if (over == true) back.nobody()
        }
    }
}

@Composable
private fun Screen(place: Place, signer: Signer) {
    when (place) {
        is Place.WhoSigns -> WhoSigns()
        is Place.Today -> Today(signer)
        is Place.Unit -> OneUnit(place.unit, signer)
        is Place.LastReport -> LastReport(place.unit, place.draft)
        is Place.AnotherUnit -> AnotherUnit(signer)
        is Place.Stop -> WalkStop(place.unit, place.draft, place.stop)
        is Place.NotWhatISee -> NotWhatISee(place.unit, place.draft)
        is Place.Sign -> Sign(place.unit, place.draft, signer)
        is Place.Slip -> Slip(place.unit, signer)
        is Place.Used -> Used(place.unit, signer)
        is Place.OtherUnit -> OtherUnit(place.unit, signer)
        is Place.Happened -> Happened(place.unit, signer)
        is Place.WhereItIs -> WhereItIs()
        is Place.SetAside -> SetAside(place.entry)
        is Place.HandOver -> HandOver()
        is Place.Roadside -> Roadside(place.unit, signer)
        is Place.Settings -> SettingsScreen()
        is Place.OwnFigures -> OwnFiguresScreen(signer)
        is Place.Defect -> Defect(place.unit, place.draft, place.stop, place.line, place.figure)
        is Place.Glass -> OneGlass(place.unit, signer)
        is Place.TopUp -> TopUp(place.unit, place.draft, signer)
        is Place.Steps -> Steps(place.unit, place.procedure, signer)
        is Place.Running -> Running(place.unit, signer)
        is Place.AirForTheJob -> AirForTheJob(place.unit)
        is Place.Display -> Display(place.unit, place.note, signer)
        is Place.Hours -> Hours(place.unit, signer)
        is Place.EndOfDay -> EndOfDay(place.unit, place.draft, signer)
    }
}
