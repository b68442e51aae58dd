package app.sumpbook.ui.desk

import androidx.compose.runtime.Composable
import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.runtime.setValue
import app.sumpbook.ui.words.LocalOwnWay
import app.sumpbook.ui.words.OwnWay
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.launch

/** What a person does on a screen: one thing at a time, durable when it is over, and what was refused stays to be said. */
@Stable
class Act(private val desk: Desk, private val way: OwnWay, private val scope: CoroutineScope) {
    /** Something is being done: a second tap does nothing. */
    var underWay by mutableStateOf(false)
        private set

    /** Why the last thing was not done. */
    var refused by mutableStateOf<Refusal?>(null)

    /** Goes on with something that is not the core's, such as what the person does in another app. */
    fun launch(then: suspend () -> Unit) {
        scope.launch { then() }
    }

    /** Does something, then goes on with what it gave. */
    fun <T> now(call: Reader.() -> T, then: (T) -> Unit = {}) {
        if (underWay) return
        underWay = true
        refused = null
        scope.launch {
            val told = desk.ask(way, call)
            underWay = false
            when (told) {
                is Told.Got -> then(told.it)
                is Told.Refused -> refused = told.why
            }
        }
    }
}

/** What a person does on this screen. */
@Composable
fun rememberAct(): Act {
    val desk = LocalDesk.current
    val way = LocalOwnWay.current
    val scope = rememberCoroutineScope()
    return remember(desk, way) { Act(desk, way, scope) }
}
