package app.sumpbook.ui.desk

import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.State
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.staticCompositionLocalOf
import app.sumpbook.core.ChangeListener
import app.sumpbook.core.ChangeSet
import app.sumpbook.core.ExchangeReport
import app.sumpbook.core.FleetHere
import app.sumpbook.core.InternalException
import app.sumpbook.core.PhoneException
import app.sumpbook.core.PhoneInterface
import app.sumpbook.core.text
import app.sumpbook.ui.words.LocalOwnWay
import app.sumpbook.ui.words.OwnWay
import kotlinx.coroutines.CoroutineDispatcher
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.flow.MutableStateFlow
import kotlinx.coroutines.flow.StateFlow
import kotlinx.coroutines.flow.update
import kotlinx.coroutines.withContext

/** What came of a call to the core. */
sealed interface Told<out T> {
    /** It was done, or read. */
    data class Got<T>(val it: T) : Told<T>

    /** It was refused: nothing was changed. */
    data class Refused(val why: Refusal) : Told<Nothing>
}

/** What came of turning to the hub, and the core's sentences about it in each language. */
data class ShopTried(val report: ExchangeReport, val sentences: Map<String, List<String>>)

/**
 * The one door to the core, made off the drawing thread. Every call runs on a thread of its own, one after the other, never on the one that draws;
 * the exchange with the hub on another, so that screens and recording go on meanwhile.
 */
class Desk(
    private val phone: PhoneInterface,
    val handset: Handset,
    private val calls: CoroutineDispatcher = Dispatchers.IO.limitedParallelism(1),
    private val exchange: CoroutineDispatcher = Dispatchers.IO.limitedParallelism(1),
) {
    private val changed = MutableStateFlow(0)
    private val asked = MutableStateFlow(0)

    @Volatile
    private var fleet: FleetHere? = null

    init {
        // What cannot be heard of is asked for all the same, with the next screen.
        told {
            phone.setListener(object : ChangeListener {
                override fun changed(what: ChangeSet) {
                    if (what.fleet) fleet = null
                    changed.update { it + 1 }
                }
            })
        }
    }

    /** How long the walks under way have taken. */
    val walks = WalkClock(handset)

    /** Counts up with every change the core tells of. */
    val changes: StateFlow<Int> get() = changed

    /** How many calls are under way. */
    val underWay: StateFlow<Int> get() = asked

    /** Asks the core, or has it do something; the words for what it gives are made in the same go. */
    suspend fun <T> ask(way: OwnWay, call: Reader.() -> T): Told<T> = on(calls) { reader(way).call() }

    /** Turns to the hub for so many milliseconds at most. */
    suspend fun exchangeOnce(deadlineMs: Int): Told<ShopTried> = on(exchange) {
        val report = phone.exchangeOnce(deadlineMs.toUInt())
        ShopTried(report, LANGUAGES.associateWith { language -> report.sentences.map { text(language, it) } })
    }

    private suspend fun <T> on(thread: CoroutineDispatcher, call: () -> T): Told<T> {
        asked.update { it + 1 }
        try {
            return withContext(thread) { told(handset.now(), call) }
        } finally {
            asked.update { it - 1 }
        }
    }

    private fun reader(way: OwnWay): Reader {
        val known = fleet ?: phone.fleet().also { fleet = it }
        return Reader(phone, known, way, handset.now())
    }
}

/** Runs a call of the core's, [now]: what it refuses is told, not thrown. */
fun <T> told(now: Long = System.currentTimeMillis(), call: () -> T): Told<T> = try {
    Told.Got(call())
} catch (why: PhoneException) {
    Told.Refused(Refusal.of(why, now))
} catch (why: InternalException) {
    Told.Refused(Refusal.of(PhoneException.Unexpected(why.message.orEmpty())))
}

/** The door in use. */
val LocalDesk = staticCompositionLocalOf<Desk> { error("no desk: provide LocalDesk") }

/**
 * What a screen shows. It is asked for off the drawing thread, again after every change and when what it is asked with
 * changes, and assigned only when it differs.
 *
 * @param with what it is asked with
 */
@Composable
fun <T> seen(vararg with: Any?, read: Reader.() -> T): State<Told<T>?> {
    val desk = LocalDesk.current
    val way = LocalOwnWay.current
    val shown = remember(desk) { mutableStateOf<Told<T>?>(null) }
    LaunchedEffect(desk, way, *with) {
        desk.changes.collect { shown.value = desk.ask(way, read) }
    }
    return shown
}
