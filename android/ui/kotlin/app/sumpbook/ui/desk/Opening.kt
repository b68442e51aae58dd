package app.sumpbook.ui.desk

import app.sumpbook.core.MainAct
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.screen.walkOn

/** A walk that was under way when the app was closed: who walks, which unit, and the stop it stands at. */
data class WalkUnderWay(val person: String, val unit: String, val draft: String, val stop: String?)

/** The one walk under way on this phone; none when there is none, or more than one: then a name says which. */
fun Reader.walkUnderWay(): WalkUnderWay? {
    val walk = phone.drafts().drafts.filter { it.kind == "pre-trip" }.singleOrNull() ?: return null
    val row = phone.today(walk.person).units.firstOrNull { it.id == walk.unit }
    val goOn = row?.main?.act as? MainAct.GoOn ?: return null
    return WalkUnderWay(walk.person, walk.unit, walk.id, goOn.stop)
}

/** Opens where the walk stands. */
fun BackStack.openAt(walk: WalkUnderWay, at: String) {
    signsNow(Signer(walk.person), at)
    go(Place.Unit(walk.unit))
    go(walkOn(walk.unit, walk.draft, walk.stop))
    closedAt = walk.stop
}
