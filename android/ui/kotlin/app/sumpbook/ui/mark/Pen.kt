package app.sumpbook.ui.mark

import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.PathEffect
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.graphics.StrokeJoin
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.graphics.drawscope.clipPath
import androidx.compose.ui.graphics.drawscope.scale
import androidx.compose.ui.graphics.vector.PathParser

/** Draws with one unit to a dp, times [times], from the upper left corner. */
internal fun DrawScope.inDp(times: Float = 1f, draw: DrawScope.() -> Unit) =
    scale(density * times, density * times, Offset.Zero, draw)

/** A path as SVG writes it. */
internal fun path(svg: String): Path = PathParser().parsePathString(svg).toPath()

/** A line of a width with square corners; dashed when [on] is more than nothing. */
internal fun line(width: Float, on: Float = 0f, off: Float = 0f): Stroke = Stroke(
    width = width,
    join = StrokeJoin.Miter,
    pathEffect = if (on > 0f) PathEffect.dashPathEffect(floatArrayOf(on, off)) else null,
)

/** A line of a width with round ends. */
internal fun roundLine(width: Float): Stroke = Stroke(width = width, cap = StrokeCap.Round, join = StrokeJoin.Round)

/** How a ground is hatched at 45 degrees: so much on, so much off. */
internal enum class Hatch(val on: Float, val off: Float) {
    /** Past its end, or waiting for a review. */
    Stopped(3f, 3f),

    /** A bound or an estimate. */
    Bound(2f, 4f),
}

/** Fills what lies within [within] with a hatch. Text never stands on one. */
internal fun DrawScope.hatch(within: Path, hatch: Hatch, color: Color, ground: Color) {
    drawPath(within, ground)
    val bounds = within.getBounds()
    // Measured along the edge, a stripe of 45 degrees is wider by the root of 2.
    val step = (hatch.on + hatch.off) * ROOT_OF_2
    clipPath(within) {
        var x = bounds.left - bounds.height
        while (x < bounds.right) {
            drawLine(color, Offset(x, bounds.bottom), Offset(x + bounds.height, bounds.top), hatch.on)
            x += step
        }
    }
}

private const val ROOT_OF_2 = 1.4142135f
