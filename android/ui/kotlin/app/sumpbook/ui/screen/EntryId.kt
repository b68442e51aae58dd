package app.sumpbook.ui.screen

import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.words.LocalOwnWay

/**
 * The id of the entry this screen will record, taken once when it opens: whoever taps again after a doubtful end records
 * nothing twice, also after the system ended the app in between. None for a moment, and when the core gives none.
 */
@Composable
fun rememberEntryId(): String? {
    val desk = LocalDesk.current
    val way = LocalOwnWay.current
    var id by rememberSaveable { mutableStateOf<String?>(null) }
    LaunchedEffect(desk) {
        if (id == null) id = (desk.ask(way) { phone.newId() } as? Told.Got)?.it
    }
    return id
}
