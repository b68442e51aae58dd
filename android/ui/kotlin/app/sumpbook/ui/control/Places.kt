package app.sumpbook.ui.control

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.layout.wrapContentSize
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawBehind
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.sp
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/**
 * Places for as many digits as are asked for: each a line, and what was typed on it. An empty place never looks like a
 * digit.
 *
 * @param hidden a disc stands for each digit
 */
@Composable
fun Places(typed: String, of: Int, hidden: Boolean = false) {
    val tokens = LocalTokens.current
    val type = LocalType.current
    val (wide, high) = with(LocalDensity.current) { 20.sp.toDp() to (type.figure.fontSize * 1.15f).toDp() }
    Row {
        for (place in 0 until of) {
            val digit = typed.getOrNull(place)
            Box(Modifier.width(wide).height(high).drawBehind { place(tokens.ink, disc = hidden && digit != null) }, Alignment.Center) {
                if (digit != null && !hidden) Text(digit.toString(), Modifier.wrapContentSize(unbounded = true), style = type.figure, color = tokens.ink)
            }
        }
    }
}

private fun DrawScope.place(ink: Color, disc: Boolean) {
    val y = size.height - 1.dp.toPx()
    val inset = 2.dp.toPx()
    drawLine(ink, Offset(inset, y), Offset(size.width - inset, y), 2.dp.toPx())
    if (disc) drawCircle(ink, size.width * 0.32f, center)
}
