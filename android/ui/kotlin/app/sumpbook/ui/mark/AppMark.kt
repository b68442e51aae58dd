package app.sumpbook.ui.mark

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.clipPath
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.Tokens
import kotlin.math.PI
import kotlin.math.cos
import kotlin.math.sin

/** The app's own mark: the glass at its middle. No letters. */
@Composable
fun AppMark(modifier: Modifier = Modifier, side: Dp = 96.dp) {
    val tokens = LocalTokens.current
    Canvas(modifier.size(side).clearAndSetSemantics {}) { inDp(side.value / 240f) { app(tokens) } }
}

private fun DrawScope.app(tokens: Tokens) {
    drawRect(tokens.paper, Offset.Zero, Size(240f, 240f))
    glassRing(tokens)
    val window = Path().apply { addOval(Rect(GlassMiddle, 88f)) }
    clipPath(window) { drawRect(tokens.oil, Offset(32f, 120f), Size(176f, 90f)) }
    drawLine(tokens.ink, Offset(32f, 120f), Offset(208f, 120f), 8f)
}

/** The middle of the sight glass in its own box. */
internal val GlassMiddle = Offset(120f, 120f)

/** Ring, window and six bolts, without what stands in it. */
internal fun DrawScope.glassRing(tokens: Tokens, given: Boolean = true) {
    drawCircle(tokens.wash, 116f, GlassMiddle)
    drawCircle(tokens.ink, 116f, GlassMiddle, style = line(3f))
    drawCircle(tokens.sheet, 90f, GlassMiddle)
    drawCircle(tokens.ink, 90f, GlassMiddle, style = if (given) line(4f) else line(4f, 8f, 6f))
    for (degrees in 30..330 step 60) {
        val angle = degrees * PI.toFloat() / 180f
        val at = GlassMiddle + Offset(103f * cos(angle), 103f * sin(angle))
        drawCircle(tokens.sheet, 6f, at)
        drawCircle(tokens.ink, 6f, at, style = line(3f))
    }
}
