package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableLongStateOf
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.saveable.listSaver
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import app.sumpbook.R
import app.sumpbook.core.Figure
import app.sumpbook.core.Glass
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.GlassSteps
import app.sumpbook.ui.control.HoldRing
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.SightGlass
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.LocalOwnWay
import app.sumpbook.ui.words.figure
import kotlinx.coroutines.delay

/** A pour that is being told: how much, when it went in on this phone's clock, and where the oil stood then. */
data class PourGiven(val volume: Figure? = null, val began: Long? = null, val after: GlassGiven = GlassGiven()) {
    companion object {
        /** The clock does not outlive the app: after it was ended the wait is not known, and nothing is said of it. */
        val Saver = listSaver<PourGiven, Any?>(
            save = { given -> listOf(given.volume?.digits, given.volume?.places?.toInt(), given.volume?.unit) + with(GlassGiven.Saver) { save(given.after) as List<*> } },
            restore = { kept ->
                val volume = (kept[0] as Long?)?.let { Figure(it, (kept[1] as Int).toUByte(), kept[2] as String) }
                @Suppress("UNCHECKED_CAST")
                PourGiven(volume, null, GlassGiven.Saver.restore(kept.drop(3) as List<Int?>) ?: GlassGiven())
            },
        )
    }
}

/** Milliseconds since the pour went in, when this app has seen it go in. */
@Composable
fun rememberWaited(pour: PourGiven): () -> UInt? {
    val handset = LocalDesk.current.handset
    return { pour.began?.let { (handset.ticks() - it).coerceIn(0, UInt.MAX_VALUE.toLong()).toUInt() } }
}

/**
 * The next pour: small, then a wait that is timed, then the glass again. Before the first one the level before it.
 *
 * @param typing the volume is typed, not chosen
 * @param before takes the level before the first pour
 */
@Composable
fun ColumnScope.PourPart(view: TopUpView, pour: PourGiven, typing: Boolean, before: (Glass) -> Unit, change: (PourGiven) -> Unit) {
    val handset = LocalDesk.current.handset
    val record = view.record
    if (!typing && (!view.wantsPour || record.main.whyNot != null)) return
    if (record.wantsBefore && !typing) return Before(view.middle, before)
    var own by remember { mutableStateOf(false) }
    val chosen = { volume: Figure ->
        own = false
        change(pour.copy(volume = volume, began = handset.ticks()))
    }
    Text(stringResource(R.string.poured_now), Modifier.semantics { heading() }, style = LocalType.current.line)
    val small = if (LocalOwnWay.current.metric) METRIC else US
    Chips {
        small.forEach { (words, volume) -> Chip(words, pour.volume == volume) { chosen(volume) } }
        val typed = pour.volume?.takeIf { volume -> small.none { it.second == volume } }
        Chip(typed?.let(::figure) ?: stringResource(R.string.other_volume), typed != null) { own = true }
    }
    if (own) TypedVolume(chosen)
    if (pour.volume == null || !record.wantsAfter) return
    if (pour.began != null && !typing) Settling(pour.began, record.settleS.toLong() * 1_000)
    Text(stringResource(R.string.level_after), style = LocalType.current.line)
    SightGlass(pour.after.glass, view.middle) { change(pour.copy(after = pour.after.copy(glass = it))) }
    GlassSteps(pour.after.glass) { change(pour.copy(after = pour.after.copy(glass = it))) }
}

/** Volumes of one tap: an eighth and a quarter of a quart. */
private val US = listOf("1/8 qt" to Figure(125, 3u, "qt"), "1/4 qt" to Figure(250, 3u, "qt"))

/** The same where volumes are metric. */
private val METRIC = listOf("125 mL" to Figure(125, 0u, "mL"), "250 mL" to Figure(250, 0u, "mL"))

@Composable
private fun Before(middle: IntRange, keep: (Glass) -> Unit) {
    var given by rememberSaveable(stateSaver = GlassGiven.Saver) { mutableStateOf(GlassGiven()) }
    Text(stringResource(R.string.level_before), style = LocalType.current.line)
    SightGlass(given.glass, middle) { given = given.copy(glass = it) }
    GlassSteps(given.glass) { given = given.copy(glass = it) }
    val glass = given.glass
    SecondaryButton(stringResource(R.string.level_before_keep), whyNot = if (glass == null) stringResource(R.string.level_before_drag) else null) {
        glass?.let(keep)
    }
}

/** The wait after a pour, on this phone's clock. Looking sooner is kept as it was. */
@Composable
private fun ColumnScope.Settling(began: Long, ofMs: Long) {
    val handset = LocalDesk.current.handset
    var now by remember(began) { mutableLongStateOf(handset.ticks()) }
    LaunchedEffect(began) {
        while (now - began < ofMs) {
            delay(TICK_MS)
            now = handset.ticks()
        }
        handset.buzz()
    }
    HoldRing(ofMs - (now - began), ofMs, stringResource(R.string.oil_settles), Modifier.align(Alignment.CenterHorizontally))
}

private const val TICK_MS = 250L

/** A volume typed: the last digits are hundredths of a quart, or whole millilitres. */
@Composable
private fun TypedVolume(chosen: (Figure) -> Unit) {
    val metric = LocalOwnWay.current.metric
    var digits by rememberSaveable { mutableStateOf("") }
    val typed = digits.toLongOrNull()?.takeIf { it > 0 }?.let { if (metric) Figure(it, 0u, "mL") else Figure(it, 2u, "qt") }
    Text(typed?.let(::figure) ?: if (metric) "0 mL" else "0.00 qt", style = LocalType.current.figure)
    Keypad({ if (digits.length < 4) digits += it }, { digits = digits.dropLast(1) })
    SecondaryButton(stringResource(R.string.volume_is), whyNot = if (typed == null) stringResource(R.string.volume_type) else null) { typed?.let(chosen) }
}
