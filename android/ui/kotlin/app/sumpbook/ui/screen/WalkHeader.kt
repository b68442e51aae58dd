package app.sumpbook.ui.screen

import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.layout.Layout
import androidx.compose.ui.layout.Placeable
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import app.sumpbook.R
import app.sumpbook.ui.control.Gap
import app.sumpbook.ui.mark.WalkLine
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/**
 * The line round the truck, and within it the door number, the stop and how far round it is. A press tells how to look.
 *
 * @param hints how to look stands there already: a press takes it away again
 */
@Composable
fun WalkHeader(view: StopView, hints: Boolean, look: () -> Unit) {
    val type = LocalType.current
    val record = view.record
    val words = when {
        hints -> stringResource(R.string.how_to_look_less)
        // A full frame may have them after its lines: the same press brings them before.
        view.isFull && view.cautions.isNotEmpty() -> stringResource(R.string.how_to_look_cautions)
        else -> stringResource(R.string.how_to_look)
    }
    WalkLine(record.marks, record.index.toInt() - 1, view.says, Modifier.clickable(onClickLabel = words, role = Role.Button, onClick = look)) {
        FourWords {
            Text(record.door, Modifier.semantics { heading() }, style = type.doorInHeader)
            Text(view.of, style = type.line)
            Text(view.title, style = type.line)
            Text(words, style = type.help, color = LocalTokens.current.act)
        }
    }
}

/**
 * Door and how far round, title and what a press does: in pairs at both ends of a row. Larger text takes a row more only
 * where no row has room: what the header takes the lines below it lack.
 */
@Composable
private fun FourWords(words: @Composable () -> Unit) {
    Layout(words, Modifier.fillMaxWidth()) { measurables, constraints ->
        val wide = constraints.maxWidth
        val gap = Gap.roundToPx()
        val (door, of, title, press) = measurables.map { it.measure(constraints.copy(minWidth = 0, minHeight = 0)) }
        fun fit(one: Placeable, other: Placeable) = one.width + gap + other.width <= wide
        val rows = ArrayList<Pair<Placeable, Placeable?>>()
        if (fit(door, of)) {
            rows += door to of
        } else {
            rows += door to null
            rows += if (!fit(title, press) && fit(of, press)) of to press else of to null
        }
        rows += if (fit(title, press)) title to press else title to null
        if (rows.none { press in it.toList() }) rows += press to null
        layout(wide, rows.sumOf { (left, right) -> maxOf(left.height, right?.height ?: 0) }) {
            var y = 0
            for ((left, right) in rows) {
                val high = maxOf(left.height, right?.height ?: 0)
                left.placeRelative(0, y + (high - left.height) / 2)
                right?.placeRelative(wide - right.width, y + (high - right.height) / 2)
                y += high
            }
        }
    }
}
