package app.sumpbook.ui.mark

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.scale
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.unit.dp
import app.sumpbook.core.LockState
import app.sumpbook.core.RoadAir
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.Tokens

/** What the pair mark shows of a unit. */
data class PairLook(
    val road: LockState,
    val air: LockState,
    /** An outlet of the air is locked; told while the air itself is not. */
    val outlet: Boolean = false,
    /** The phone's news is older than the shop lets pass. */
    val old: Boolean = false,
) {
    companion object {
        /** The look of a unit's record. */
        fun of(roadAir: RoadAir, old: Boolean): PairLook =
            PairLook(roadAir.road.state, roadAir.air.state, roadAir.outlets.isNotEmpty(), old)
    }
}

/**
 * Road on the left, air on the right, each by itself. A lock shoots a bolt out of its side: the outline changes, so
 * that the mark reads without colour. It says nothing by itself: road and air always stand beside it in words, and
 * are read in that order.
 *
 * @param times 1 is 112 x 40 dp; under 0.75 only the words stand
 */
@Composable
fun PairMark(look: PairLook, modifier: Modifier = Modifier, times: Float = 1f) {
    val tokens = LocalTokens.current
    Canvas(modifier.size((112 * times).dp, (40 * times).dp).clearAndSetSemantics {}) {
        inDp(times) { pair(look, tokens) }
    }
}

private val Road by lazy { path("M18 2H60L52 38H18Q14 38 14 34V6Q14 2 18 2Z") }
private val Air by lazy { path("M64 2H94Q98 2 98 6V34Q98 38 94 38H56Z") }
private val Corner by lazy { path("M98 25H84V38H94Q98 38 98 34Z") }
private val Wheel = Offset(33f, 20f)
private val Breath = Offset(79f, 20f)

private fun DrawScope.pair(look: PairLook, tokens: Tokens) {
    half(Road, Wheel, look.road, look.old, tokens, DrawScope::wheel)
    bolt(look.road, outer = 2f, inner = 14f, tokens)
    half(Air, Breath, look.air, look.old, tokens, DrawScope::breath)
    bolt(look.air, outer = 110f, inner = 98f, tokens)
    if (look.outlet && look.air == LockState.NO_LOCK_ON_RECORD) {
        drawPath(Corner, tokens.stop)
        drawRect(tokens.stop, Offset(98f, 27f), Size(8f, 8f))
    }
}

private fun DrawScope.half(
    body: Path,
    middle: Offset,
    state: LockState,
    old: Boolean,
    tokens: Tokens,
    glyph: DrawScope.(Color) -> Unit,
) {
    when (state) {
        LockState.NO_LOCK_ON_RECORD -> {
            drawPath(body, tokens.sheet)
            drawPath(body, tokens.ink, style = if (old) line(2.5f, 5f, 4f) else line(2.5f))
            glyph(tokens.ink)
        }
        LockState.AWAITING_REVIEW -> {
            hatch(body, Hatch.Stopped, tokens.stop, tokens.sheet)
            drawPath(body, tokens.stop, style = if (old) line(2.5f, 5f, 4f) else line(2.5f))
            drawCircle(tokens.sheet, 14f, middle)
            glyph(tokens.ink)
        }
        LockState.LOCKED -> {
            // On a solid ground a dashed outline would not be seen: the ground shrinks within it.
            if (old) {
                scale(0.82f, 0.76f, body.getBounds().center) { drawPath(body, tokens.stop) }
                drawPath(body, tokens.stop, style = line(2.5f, 5f, 4f))
            } else {
                drawPath(body, tokens.stop)
            }
            glyph(tokens.onStop)
        }
    }
}

private fun DrawScope.bolt(state: LockState, outer: Float, inner: Float, tokens: Tokens) {
    val side = if (outer < inner) 1f else -1f
    when (state) {
        LockState.NO_LOCK_ON_RECORD -> Unit
        LockState.LOCKED ->
            drawRect(tokens.stop, Offset(minOf(outer, inner), 13f), Size(12f, 14f))
        // Half out.
        LockState.AWAITING_REVIEW -> {
            val left = if (side > 0) inner - 6f else inner
            drawRect(tokens.sheet, Offset(left, 14f), Size(6f, 12f))
            drawRect(tokens.stop, Offset(left, 14f), Size(6f, 12f), style = line(2f))
        }
    }
}

private fun DrawScope.wheel(color: Color) {
    drawCircle(color, 9f, Wheel, style = line(3f))
    drawCircle(color, 3f, Wheel)
}

private fun DrawScope.breath(color: Color) {
    for ((y, long) in listOf(12f to 12f, 20f to 18f, 28f to 6f)) {
        drawPath(path("M70 ${y}h$long"), color, style = roundLine(3.5f))
    }
}
