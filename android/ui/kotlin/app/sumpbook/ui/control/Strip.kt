package app.sumpbook.ui.control

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.relocation.BringIntoViewRequester
import androidx.compose.foundation.relocation.bringIntoViewRequester
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.remember
import androidx.compose.runtime.withFrameNanos
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawBehind
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/**
 * What must be seen before going on: a caution, the age of the news, a lock. A heavy bar stands at its left.
 *
 * @param heavy it tells of a lock: the words are bold
 * @param calls where strips scroll it brings itself into sight when its words are new: what was refused must not lie above
 *   what one looks at
 * @param small text of the smallest size, where a full frame leaves no more room
 * @param onPress what a press opens; none: it is only read
 */
@Composable
fun Strip(words: String, modifier: Modifier = Modifier, heavy: Boolean = false, small: Boolean = false, calls: Boolean = heavy, onPress: (() -> Unit)? = null) {
    val tokens = LocalTokens.current
    val type = LocalType.current
    val press = rememberPress()
    val pressing = onPress != null && press.pressed
    val style = when {
        heavy -> if (small) type.helpStrong else type.strong
        else -> if (small) type.help else type.text
    }
    val sight = remember { BringIntoViewRequester() }
    LaunchedEffect(words, calls) {
        if (!calls) return@LaunchedEffect
        // It has to have its place first.
        withFrameNanos { }
        sight.bringIntoView()
    }
    Box(
        modifier.fillMaxWidth()
            .bringIntoViewRequester(sight)
            .drawBehind {
                drawRect(if (pressing) tokens.ink else tokens.wash)
                drawRect(tokens.ink, Offset.Zero, Size(8.dp.toPx(), size.height))
                if (tokens.high) {
                    val half = 1.dp.toPx()
                    drawRect(tokens.ink, Offset(half, half), Size(size.width - 2 * half, size.height - 2 * half), style = Stroke(2 * half))
                }
                if (onPress != null) chevron(if (pressing) tokens.wash else tokens.ink)
            }
            .then(if (onPress != null) Modifier.opens(press, onPress) else Modifier)
            .padding(start = 20.dp, end = if (onPress != null) 36.dp else 12.dp, top = if (small) 6.dp else 8.dp, bottom = if (small) 6.dp else 8.dp),
        contentAlignment = Alignment.CenterStart,
    ) {
        Text(words, style = style, color = if (pressing) tokens.wash else tokens.ink)
    }
}
