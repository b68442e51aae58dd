package app.sumpbook.ui

import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableIntStateOf
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.ui.desk.Home
import app.sumpbook.ui.desk.HomeNow
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.screen.AddPhone
import app.sumpbook.ui.screen.BookShut
import app.sumpbook.ui.screen.WaitingForShop
import app.sumpbook.ui.screen.sentence

/** The whole app: a phone that is not added yet is, then it waits for its books, then its day begins. */
@Composable
fun Door(home: Home, back: BackStack = rememberSaveable(saver = BackStack.Saver) { BackStack() }) {
    var now by remember(home) { mutableStateOf<HomeNow>(HomeNow.Unread) }
    var tries by remember { mutableIntStateOf(0) }
    // A code that ran out is no end: another one takes its place, and the phone keeps its key.
    var another by remember { mutableStateOf(false) }
    LaunchedEffect(home, tries) { now = home.open() }
    when (val stands = now) {
        HomeNow.Unread -> Unit
        HomeNow.New -> AddPhone(home) { now = it }
        is HomeNow.Shut -> BookShut(sentence(stands.why)) { tries++ }
        HomeNow.Unfit -> BookShut(stringResource(R.string.error_unfit)) { tries++ }
        is HomeNow.Open -> if (another) AddPhone(home) {
            now = it
            another = false
        } else CompositionLocalProvider(LocalDesk provides stands.desk) {
            WaitingForShop({ tries++ }, { another = true }) { App(stands.desk, back) }
        }
    }
}
