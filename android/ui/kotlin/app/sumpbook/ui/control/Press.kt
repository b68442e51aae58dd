package app.sumpbook.ui.control

import androidx.compose.foundation.clickable
import androidx.compose.foundation.interaction.MutableInteractionSource
import androidx.compose.foundation.interaction.collectIsFocusedAsState
import androidx.compose.foundation.interaction.collectIsPressedAsState
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawWithContent
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.Outline
import androidx.compose.ui.graphics.PathEffect
import androidx.compose.ui.graphics.Shape
import androidx.compose.ui.graphics.drawOutline
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.graphics.drawscope.translate
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.theme.Tokens

/** The least side of what is touched, with a glove. */
val Target = 56.dp

/** The least between two of them. */
val Gap = 12.dp

/** Everything that is pressed has these corners, but for the main button. */
val Corner = 4.dp

/** How a thing that is pressed looks now. */
internal class Press(val source: MutableInteractionSource, val pressed: Boolean, val focused: Boolean)

@Composable
internal fun rememberPress(): Press {
    val source = remember { MutableInteractionSource() }
    val pressed by source.collectIsPressedAsState()
    val focused by source.collectIsFocusedAsState()
    return Press(source, pressed, focused)
}

/** Takes a press without a ripple: fill and text swap instead. */
internal fun Modifier.pressed(press: Press, enabled: Boolean = true, role: Role = Role.Button, onPress: () -> Unit): Modifier =
    clickable(press.source, indication = null, enabled = enabled, role = role, onClick = onPress)

/** What a thing that is pressed is filled and outlined with. */
internal class Ground(val fill: Color, val outline: Color, val words: Color, val dashed: Boolean = false, val width: Dp = 2.dp)

/** Fill, outline within the shape, and the ring of the focus around it. */
internal fun Modifier.ground(ground: Ground, shape: Shape, press: Press, tokens: Tokens): Modifier = drawWithContent {
    val outline = shape.createOutline(size, layoutDirection, this)
    drawOutline(outline, ground.fill)
    within(shape, ground.width / 2) { inner ->
        val dash = if (ground.dashed) PathEffect.dashPathEffect(floatArrayOf(6.dp.toPx(), 4.dp.toPx())) else null
        drawOutline(inner, ground.outline, style = Stroke(ground.width.toPx(), pathEffect = dash))
    }
    drawContent()
    if (press.focused) {
        // 2 of the ground, then 3 of act: seen on any fill.
        within(shape, (-1).dp) { drawOutline(it, tokens.paper, style = Stroke(2.dp.toPx())) }
        within(shape, (-3.5).dp) { drawOutline(it, tokens.act, style = Stroke(3.dp.toPx())) }
    }
}

private fun DrawScope.within(shape: Shape, inset: Dp, draw: DrawScope.(Outline) -> Unit) {
    val by = inset.toPx()
    val inner = shape.createOutline(Size(size.width - 2 * by, size.height - 2 * by), layoutDirection, this)
    translate(by, by) { draw(inner) }
}
