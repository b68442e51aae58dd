package app.sumpbook.ui.mark

import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.clipPath
import app.sumpbook.core.Glass
import app.sumpbook.ui.theme.Tokens

/** The height of a level in the glass's box of 328 x 240. */
internal fun levelY(percent: Float): Float = 208f - 1.76f * percent

/**
 * The sight glass in its box: ring, window, middle band, what stands in it, and the handle.
 *
 * @param handle the level can be dragged
 * @param focused the handle has the focus of a keyboard
 */
internal fun DrawScope.glass(given: Glass?, middle: IntRange, handle: Boolean, focused: Boolean, tokens: Tokens) {
    glassRing(tokens, given = given != null)
    band(middle, tokens)
    val level = (given as? Glass.Percent)?.v1?.toFloat()
    when (given) {
        null -> Unit
        is Glass.Percent -> {
            val y = levelY(given.v1.toFloat())
            oilUpTo(y, tokens)
            surface(y, tokens)
            levelLine(y, if (handle) 264f else 236f, tokens)
        }
        Glass.BelowView -> drawPath(path("M104 176H136L120 196Z"), tokens.ink)
        Glass.AboveView -> {
            oilUpTo(GlassMiddle.y - 88f, tokens)
            drawPath(path("M104 64H136L120 44Z"), tokens.inOil)
        }
    }
    if (handle) {
        val y = when (given) {
            null -> GlassMiddle.y
            is Glass.Percent -> levelY(level ?: 0f)
            Glass.BelowView -> levelY(0f)
            Glass.AboveView -> levelY(100f)
        }
        handle(y, given != null, focused, tokens)
    }
}

/** The middle band: solid blocks at both sides of the window. */
private fun DrawScope.band(middle: IntRange, tokens: Tokens) {
    val (top, bottom) = levelY(middle.last.toFloat()) to levelY(middle.first.toFloat())
    for (x in listOf(6f, 212f)) drawRect(tokens.ink, Offset(x, top), Size(22f, bottom - top))
}

private fun DrawScope.oilUpTo(y: Float, tokens: Tokens) {
    val window = Path().apply { addOval(Rect(GlassMiddle, 88f)) }
    clipPath(window) { drawRect(tokens.oil, Offset(32f, y), Size(176f, 212f - y)) }
}

/** A draughtsman's free surface: dashes in the oil, and a triangle that stands on it. */
private fun DrawScope.surface(y: Float, tokens: Tokens) {
    val window = Path().apply { addOval(Rect(GlassMiddle, 88f)) }
    clipPath(window) {
        for ((down, half) in listOf(14f to 52f, 24f to 36f, 34f to 20f)) {
            drawLine(tokens.inOil, Offset(120f - half, y + down), Offset(120f + half, y + down), 3f)
        }
        drawPath(path("M108 ${y - 16}H132L120 ${y - 2}Z"), tokens.ink)
    }
}

private fun DrawScope.levelLine(y: Float, right: Float, tokens: Tokens) {
    drawLine(tokens.sheet, Offset(32f, y), Offset(right, y), 8f)
    drawLine(tokens.ink, Offset(32f, y), Offset(right, y), 4f)
}

private fun DrawScope.handle(y: Float, given: Boolean, focused: Boolean, tokens: Tokens) {
    val nose = path("M264 ${y}L278 ${y - 28}H328V${y + 28}H278Z")
    if (given) {
        drawPath(nose, tokens.act)
        for (bar in listOf(y - 8f, y + 4f)) drawRect(tokens.onAct, Offset(288f, bar), Size(24f, 4f))
    } else {
        // Inset by half its width: it ends with the box.
        drawPath(path("M266 ${y}L279 ${y - 26.5f}H326.5V${y + 26.5f}H279Z"), tokens.act, style = line(3f, 8f, 6f))
    }
    if (focused) drawPath(path("M270 ${y}L281 ${y - 22}H322V${y + 22}H281Z"), tokens.onAct, style = line(3f))
}
