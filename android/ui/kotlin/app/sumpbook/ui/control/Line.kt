package app.sumpbook.ui.control

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawBehind
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/**
 * A line that is answered, or opens what it names. All of it is the door: one tap anywhere.
 *
 * @param under what OK is, or whose answer it is
 * @param said what stands on record for it, right of its name or under it; heavy when it is a defect
 */
@Composable
fun Line(
    name: String,
    modifier: Modifier = Modifier,
    under: String? = null,
    said: String? = null,
    defect: Boolean = false,
    onPress: (() -> Unit)? = null,
) {
    val tokens = LocalTokens.current
    val type = LocalType.current
    val press = rememberPress()
    val look = when {
        press.pressed -> Ground(tokens.ink, tokens.ink, tokens.sheet)
        defect -> Ground(tokens.sheet, tokens.stop, tokens.ink, width = 4.dp)
        else -> Ground(tokens.sheet, tokens.rule, tokens.ink)
    }
    val soft = if (press.pressed) tokens.sheet else tokens.soft
    // Large text would break words in two columns: then the answer stands under the name.
    val scale = LocalDensity.current.fontScale
    val beside = scale <= 1.3f
    // The larger the words, the more of the line is theirs: fewer pages to turn.
    val (before, behind, over) = if (scale <= 1.15f) Triple(12.dp, 36.dp, 6.dp) else Triple(8.dp, 30.dp, 4.dp)
    val answer = @Composable {
        val words = if (press.pressed || !defect) look.words else tokens.stop
        Text(said.orEmpty(), style = if (defect) type.strong else type.help, color = words)
    }
    Row(
        modifier.fillMaxWidth().heightIn(min = Target)
            .ground(look, RoundedCornerShape(Corner), press, tokens)
            .then(if (onPress != null) Modifier.pressed(press, onPress = onPress) else Modifier)
            .drawBehind { if (onPress != null) chevron(look.words) }
            .padding(start = before, end = if (onPress != null) behind else before, top = over, bottom = over),
        horizontalArrangement = Arrangement.spacedBy(8.dp),
        verticalAlignment = Alignment.CenterVertically,
    ) {
        Column(Modifier.weight(1f)) {
            Text(name, style = type.line, color = look.words)
            if (under != null) Text(under, style = type.help, color = soft)
            if (said != null && !beside) answer()
        }
        if (said != null && beside) answer()
    }
}

/** A press that opens what a line or a strip names. */
internal fun Modifier.opens(press: Press, onPress: () -> Unit): Modifier = heightIn(min = Target).pressed(press, onPress = onPress)

/** The sign at the right end of what opens something: drawn, for the font has no such letter. */
internal fun DrawScope.chevron(color: Color) {
    val (x, y) = Offset(size.width - 24.dp.toPx(), size.height / 2)
    val way = Path().apply {
        moveTo(x, y - 8.dp.toPx())
        lineTo(x + 8.dp.toPx(), y)
        lineTo(x, y + 8.dp.toPx())
    }
    drawPath(way, color, style = Stroke(3.dp.toPx(), cap = StrokeCap.Square))
}
