package app.sumpbook.ui.control

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.widthIn
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.layout.Layout
import androidx.compose.ui.layout.Measurable
import androidx.compose.ui.layout.Placeable
import androidx.compose.ui.semantics.disabled
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.semantics.stateDescription
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.Constraints
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/**
 * A press beside the main one: only outlined, so that it never looks like the main one.
 *
 * @param whyNot why it may not be pressed, in words above it; none: it may
 */
@Composable
fun SecondaryButton(
    words: String,
    modifier: Modifier = Modifier,
    whyNot: String? = null,
    side: Dp = 12.dp,
    onPress: () -> Unit,
) {
    if (whyNot == null) {
        Outlined(words, modifier, null, side, onPress)
        return
    }
    Column(modifier) {
        Text(whyNot, Modifier.padding(bottom = 4.dp), style = LocalType.current.help, color = LocalTokens.current.soft)
        Outlined(words, Modifier.fillMaxWidth(), whyNot, side, onPress)
    }
}

@Composable
private fun Outlined(words: String, modifier: Modifier, whyNot: String?, side: Dp, onPress: () -> Unit) {
    val tokens = LocalTokens.current
    val press = rememberPress()
    val look = when {
        whyNot != null -> Ground(tokens.sheet, tokens.rule, tokens.soft, dashed = true)
        press.pressed -> Ground(tokens.ink, tokens.ink, tokens.sheet)
        else -> Ground(tokens.sheet, tokens.ink, tokens.ink)
    }
    Box(
        modifier.widthIn(min = Target).heightIn(min = Target)
            .ground(look, RoundedCornerShape(Corner), press, tokens)
            .pressed(press, enabled = whyNot == null, onPress = onPress)
            .semantics {
                if (whyNot != null) {
                    stateDescription = whyNot
                    disabled()
                }
            }
            .padding(horizontal = side, vertical = 8.dp),
        contentAlignment = Alignment.Center,
    ) {
        Text(words, style = LocalType.current.line, color = look.words, textAlign = TextAlign.Center)
    }
}

/**
 * Buttons beside each other while their words fit on one line each, 12 apart, else in more rows. A row is filled, and
 * its buttons are of one height. No word is broken while there is a row to take it.
 */
@Composable
fun SecondaryRow(modifier: Modifier = Modifier, content: @Composable () -> Unit) {
    Layout(content, modifier.fillMaxWidth()) { buttons, constraints ->
        val wide = constraints.maxWidth
        val gap = Gap.roundToPx()
        val rows = rows(buttons, wide, gap)
        val placed = ArrayList<Triple<Placeable, Int, Int>>()
        var y = 0
        for (row in rows) {
            val widths = widths(row, wide, gap)
            val high = row.zip(widths).maxOf { (button, width) -> button.minIntrinsicHeight(width) }
            var x = 0
            for ((button, width) in row.zip(widths)) {
                placed += Triple(button.measure(Constraints.fixed(width, high)), x, y)
                x += width + gap
            }
            y += high + gap
        }
        layout(wide, (y - gap).coerceAtLeast(0)) { for ((button, x, top) in placed) button.placeRelative(x, top) }
    }
}

private fun rows(buttons: List<Measurable>, wide: Int, gap: Int): List<List<Measurable>> {
    val rows = ArrayList<ArrayList<Measurable>>()
    var used = 0
    for (button in buttons) {
        val width = button.asked()
        if (rows.isEmpty() || used + gap + width > wide) {
            rows += arrayListOf(button)
            used = width
        } else {
            rows.last() += button
            used += gap + width
        }
    }
    return rows
}

/** Equal where that is enough for each, else what each asks and a share of what is left. */
private fun widths(row: List<Measurable>, wide: Int, gap: Int): List<Int> {
    val free = wide - gap * (row.size - 1)
    val asked = row.map { it.asked() }
    if (asked.all { it <= free / row.size }) return row.map { free / row.size }
    val left = (free - asked.sum()).coerceAtLeast(0) / row.size
    return asked.map { (it + left).coerceAtMost(free) }
}

private fun Measurable.asked(): Int = maxIntrinsicWidth(Constraints.Infinity)
