package app.sumpbook.ui.control

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.size
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawBehind
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.sp
import app.sumpbook.ui.theme.LocalStill
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType
import kotlin.math.ceil
import kotlinx.coroutines.delay

/**
 * A time that runs out: a ring that empties, and the seconds left in figures within it. Who asked for no motion sees
 * the figures and a ring that goes by quarters. Whoever saw it run out sees it blink twice, slower than two times a second;
 * nobody who asked for no motion does.
 *
 * @param leftMs milliseconds left; 0 and less: run out, the ring is whole and heavy
 * @param says what it counts, for a reader of the screen; it is read again when it has run out
 */
@Composable
fun HoldRing(leftMs: Long, ofMs: Long, says: String, modifier: Modifier = Modifier, side: Dp = 160.dp) {
    // The figures stand within the ring at any size of text.
    val grown = maxOf(side, with(LocalDensity.current) { 120.sp.toDp() })
    val tokens = LocalTokens.current
    val still = LocalStill.current
    val left = leftMs.coerceAtLeast(0)
    // Rounded up: 0 is only said when it has run out.
    val seconds = (left + 999) / 1_000
    val share = left.toFloat() / ofMs.coerceAtLeast(1)
    val lit = blinks(left == 0L, still)
    val shown = if (still) ceil(share * 4) / 4 else share
    Box(
        modifier.size(grown)
            .semantics {
                contentDescription = says
                if (left == 0L) liveRegion = LiveRegionMode.Assertive
            }
            .drawBehind {
                val width = 12.dp.toPx()
                val box = Size(size.width - width, size.height - width)
                val corner = Offset(width / 2, width / 2)
                drawCircle(tokens.rule, (size.minDimension - width) / 2, style = Stroke(2.dp.toPx()))
                if (left == 0L && lit) drawCircle(tokens.ink, (size.minDimension - width) / 2, style = Stroke(width))
                else if (left > 0L) drawArc(tokens.act, -90f, 360f * shown, false, corner, box, style = Stroke(width, cap = StrokeCap.Butt))
            },
        contentAlignment = Alignment.Center,
    ) {
        Text("%d:%02d".format(seconds / 60, seconds % 60), style = LocalType.current.figure, color = tokens.ink)
    }
}

/** Whether the ring of a time that is out is drawn just now: it blinks twice when it runs out, and stands from then on. */
@Composable
private fun blinks(out: Boolean, still: Boolean): Boolean {
    var lit by remember { mutableStateOf(true) }
    val wasOut = remember { out }
    LaunchedEffect(out) {
        lit = true
        if (!out || wasOut || still) return@LaunchedEffect
        repeat(BLINKS) {
            lit = false
            delay(HALF_BLINK_MS)
            lit = true
            delay(HALF_BLINK_MS)
        }
    }
    return lit
}

private const val BLINKS = 2

/** Half of a blink: with both halves there are fewer than two of them in a second. */
private const val HALF_BLINK_MS = 300L
