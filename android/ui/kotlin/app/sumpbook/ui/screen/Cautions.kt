package app.sumpbook.ui.screen

import androidx.compose.foundation.ScrollState
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.layout.Layout
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.control.Gap
import app.sumpbook.ui.control.Strip

/**
 * The cautions of a stop, before its lines. Where the lines alone just fill the frame they stand after them: no line is
 * pushed out of sight by them, and they are still read before the button.
 *
 * @param scroll what they and the lines are scrolled by
 * @param first before the lines in any case
 * @param last after them in any case
 */
@Composable
fun CautionsAndLines(cautions: List<String>, scroll: ScrollState, first: Boolean, last: Boolean = false, lines: @Composable () -> Unit) {
    Layout(
        contents = listOf(
            { Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp)) { cautions.forEach { Strip(it, small = true) } } },
            { Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(Gap)) { lines() } },
        ),
    ) { (said, rows), constraints ->
        val above = said.first().measure(constraints)
        val under = rows.first().measure(constraints)
        val gap = if (cautions.isEmpty()) 0 else Gap.roundToPx()
        val whole = above.height + gap + under.height
        val frame = scroll.viewportSize
        val after = cautions.isNotEmpty() && (last || !first && under.height <= frame && whole > frame)
        layout(constraints.maxWidth, whole) {
            above.placeRelative(0, if (after) under.height + gap else 0)
            under.placeRelative(0, if (after) 0 else above.height + gap)
        }
    }
}
