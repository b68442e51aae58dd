package app.sumpbook.ui

import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.key
import androidx.compose.runtime.saveable.rememberSaveable
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.screen.LastReport
import app.sumpbook.ui.screen.OneUnit
import app.sumpbook.ui.screen.Today
import app.sumpbook.ui.screen.WhoSigns

/** The app of a phone that is set up: the screen of the place one is at. */
@Composable
fun App(desk: Desk, back: BackStack = rememberSaveable(saver = BackStack.Saver) { BackStack() }) {
    CompositionLocalProvider(LocalDesk provides desk, LocalBackStack provides back) {
        LaunchedEffect(desk) { desk.listen() }
        val signer = back.signer
        // What a screen remembers is of its place: another stop begins anew.
        key(back.top) { if (signer == null) WhoSigns() else Screen(back.top, signer) }
    }
}

@Composable
private fun Screen(place: Place, signer: Signer) {
    when (place) {
        is Place.WhoSigns -> WhoSigns()
        is Place.Today -> Today(signer)
        is Place.Unit -> OneUnit(place.unit, signer)
        is Place.LastReport -> LastReport(place.unit, place.draft)
        else -> Today(signer)
    }
}
