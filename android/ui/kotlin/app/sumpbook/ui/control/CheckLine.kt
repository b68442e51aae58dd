package app.sumpbook.ui.control

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.selection.toggleable
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawBehind
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/** A sign somebody looked at, such as the gauge at 0: a box that is ticked, and its words. */
@Composable
fun CheckLine(words: String, seen: Boolean, modifier: Modifier = Modifier, onChange: (Boolean) -> Unit) {
    val tokens = LocalTokens.current
    val press = rememberPress()
    val look = if (press.pressed) Ground(tokens.ink, tokens.ink, tokens.sheet) else Ground(tokens.sheet, tokens.ink, tokens.ink)
    Box(
        modifier.fillMaxWidth().heightIn(min = Target)
            .ground(look, RoundedCornerShape(Corner), press, tokens)
            .toggleable(seen, press.source, indication = null, role = Role.Checkbox, onValueChange = onChange)
            .drawBehind {
                val side = 28.dp.toPx()
                val (left, top) = Offset(14.dp.toPx(), (size.height - side) / 2)
                if (seen) {
                    drawRect(look.words, Offset(left, top), Size(side, side))
                    val tick = Path().apply {
                        moveTo(left + side * 0.2f, top + side * 0.52f)
                        lineTo(left + side * 0.43f, top + side * 0.75f)
                        lineTo(left + side * 0.82f, top + side * 0.28f)
                    }
                    drawPath(tick, look.fill, style = Stroke(4.dp.toPx()))
                } else {
                    drawRect(look.words, Offset(left, top), Size(side, side), style = Stroke(3.dp.toPx()))
                }
            }
            .padding(start = 56.dp, end = 12.dp, top = 8.dp, bottom = 8.dp),
        contentAlignment = Alignment.CenterStart,
    ) {
        Text(words, style = LocalType.current.line, color = look.words)
    }
}
