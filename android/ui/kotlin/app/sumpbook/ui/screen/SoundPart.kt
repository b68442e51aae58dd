package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.DisposableEffect
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.MutableState
import androidx.compose.runtime.SideEffect
import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import app.sumpbook.core.SoundAct
import app.sumpbook.core.SoundNow
import app.sumpbook.core.SoundQuery
import app.sumpbook.core.SoundTrouble
import app.sumpbook.core.soundPart
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.SecondaryRow
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Act
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.LocalSounds
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Recorded
import app.sumpbook.ui.desk.Sounds
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.theme.LocalType
import kotlinx.coroutines.CompletableDeferred
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Job
import kotlinx.coroutines.delay
import kotlinx.coroutines.launch

/** The sound of what is being told, and what is going on with it. */
@Stable
class SoundTold internal constructor(id: MutableState<String?>) {
    /** Its name; none while there is none. */
    var sound by id

    /** What is going on. */
    var now by mutableStateOf<SoundNow>(SoundNow.Still)

    /** What went wrong last. */
    var trouble by mutableStateOf<SoundTrouble?>(null)

    /** It is being recorded: kept now, what is told would go without it. */
    val recording: Boolean get() = now is SoundNow.Recording

    /** What ends the recording, with its words: the main thing at the thumb so long, whatever the page is scrolled to. */
    var ends by mutableStateOf<Pair<String, () -> Unit>?>(null)
        internal set
}

/** The sound of what is being told on this screen; [first]: the one that goes with it already. */
@Composable
fun rememberSoundTold(first: String?): SoundTold {
    val id = rememberSaveable { mutableStateOf(first) }
    return remember { SoundTold(id) }
}

/** The part with its words. */
private class SoundWords(val mostMs: Int, val lines: List<Pair<String, Boolean>>, val buttons: List<Pair<SoundAct, String>>)

private fun Reader.soundWords(query: SoundQuery): SoundWords {
    val part = soundPart(query)
    return SoundWords(
        part.mostMs.toInt(),
        part.lines.map { line -> (line.seconds?.let { words(line.key, "seconds" to it) } ?: words(line.key)) to line.heavy },
        part.buttons.map { it.act to words(it.key) },
    )
}

/**
 * The noise of what is being told: recorded, heard again, taken away. It is kept on this phone before it is named, and
 * one that is not kept never holds up what it belongs to. Nothing where there is no way to sounds.
 */
@Composable
fun SoundPart(told: SoundTold) {
    val sounds = LocalSounds.current ?: return
    val act = rememberAct()
    val scope = rememberCoroutineScope()
    val handset = LocalDesk.current.handset
    val hands = remember(sounds, act) { SoundHands(sounds, told, act, scope, handset::ticks) }
    val query = SoundQuery(told.sound != null, told.now, sounds.microphone, sounds.files, told.trouble)
    val shown by seen(query) { soundWords(query) }
    // How long it has been recorded already, second by second.
    LaunchedEffect(hands.began) {
        while (told.recording) {
            hands.count()
            delay(TICK_MS)
        }
    }
    // Left for another answer the recording is over with this part.
    DisposableEffect(told) { onDispose { told.ends = null } }
    val words = (shown as? Told.Got)?.it ?: return
    val (ends, others) = words.buttons.partition { it.first == SoundAct.STOP }
    SideEffect { told.ends = ends.firstOrNull()?.let { (does, label) -> label to { hands.does(does, words.mostMs) } } }
    words.lines.forEach { (line, heavy) -> if (heavy) Strip(line, heavy = true) else Text(line, style = LocalType.current.text) }
    if (others.isNotEmpty()) SecondaryRow { others.forEach { (does, label) -> SecondaryButton(label) { hands.does(does, words.mostMs) } } }
    act.refused?.let { Strip(sentence(it)) }
}

/** What the buttons do. */
@Stable
private class SoundHands(
    private val sounds: Sounds,
    private val told: SoundTold,
    private val act: Act,
    private val scope: CoroutineScope,
    private val ticks: () -> Long,
) {
    private var stop = CompletableDeferred<Unit>()
    private var plays: Job? = null

    /** When the microphone began to listen, on the handset's clock. */
    var began by mutableStateOf<Long?>(null)
        private set

    /** Counts how long it listens. */
    fun count() {
        val since = began ?: return
        told.now = SoundNow.Recording(((ticks() - since) / 1_000 * 1_000).coerceAtLeast(0).toUInt())
    }

    fun does(what: SoundAct, mostMs: Int) {
        told.trouble = null
        act.refused = null
        when (what) {
            SoundAct.RECORD -> record(mostMs)
            SoundAct.STOP -> stop.complete(Unit)
            SoundAct.CHOOSE -> act.launch { sounds.pick()?.let(::keep) }
            SoundAct.LISTEN -> listen()
            SoundAct.STOP_LISTENING -> plays?.cancel()
            SoundAct.TAKE_AWAY -> told.sound = null
        }
    }

    private fun record(mostMs: Int) {
        if (told.now != SoundNow.Still || began != null) return
        stop = CompletableDeferred()
        scope.launch {
            try {
                val came = sounds.record(mostMs, { told.now = SoundNow.Recording(0u); began = ticks() }, stop)
                when (came) {
                    is Recorded.Sound -> keep(came.bytes)
                    Recorded.NotAllowed -> told.trouble = SoundTrouble.NOT_ALLOWED
                    Recorded.NoMicrophone -> told.trouble = SoundTrouble.NO_MICROPHONE
                }
            } finally {
                told.now = SoundNow.Still
                began = null
            }
        }
    }

    private fun keep(bytes: ByteArray) = act.now({ phone.keepSound(bytes) }) { told.sound = it }

    private fun listen() {
        val sound = told.sound ?: return
        act.now({ phone.sound(sound) }) { bytes ->
            plays = scope.launch {
                told.now = SoundNow.Listening
                try {
                    if (bytes == null || !sounds.play(bytes)) told.trouble = SoundTrouble.NOT_PLAYED
                } finally {
                    told.now = SoundNow.Still
                }
            }
        }
    }
}

private const val TICK_MS = 250L
