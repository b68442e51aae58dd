package app.sumpbook.ui.control

import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.RowScope
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.layout.wrapContentHeight
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.clipToBounds
import androidx.compose.ui.draw.drawBehind
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.sp
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/**
 * A figure that fills from the right like the meter: the last digit typed is the tenth. The figure before stands over
 * it in the same columns, so that a digit that jumped is seen.
 *
 * @property digits what was typed, without a point
 * @property tenths the last digit is a tenth
 */
data class MeterTyped(val digits: String = "", val tenths: Boolean = true) {
    /** One digit more; a figure longer than a meter has is not taken. */
    fun with(digit: Int): MeterTyped = if (digits.length >= MOST || (digits.isEmpty() && digit == 0)) this else copy(digits = digits + digit)

    /** The last digit taken back. */
    fun erased(): MeterTyped = copy(digits = digits.dropLast(1))

    /** In tenths; none while nothing is typed. */
    val inTenths: Long? get() = digits.toLongOrNull()?.let { if (tenths) it else it * 10 }

    private companion object {
        /** A meter of 99,999.9 h, and one digit for those who count on. */
        const val MOST = 7
    }
}

/** The digits of a figure in tenths as the meter has them: each in a column of its own, the point in one too. */
internal fun columns(digits: String, tenths: Boolean, wide: Int): List<String> {
    val whole = if (tenths) digits.dropLast(1).ifEmpty { if (digits.isEmpty()) "" else "0" } else digits
    val shown = whole.padStart(wide).map(Char::toString)
    return if (tenths) shown + "." + digits.takeLast(1).ifEmpty { " " } else shown
}

/**
 * @param before words of the figure before, such as when it was read; and its digits
 * @param now the words before what is typed
 * @param says both in one sentence
 */
@Composable
fun MeterFigure(before: Pair<String, Long>?, now: String, typed: MeterTyped, says: String, modifier: Modifier = Modifier) {
    val type = LocalType.current
    val last = before?.second?.let { if (typed.tenths) it else it / 10 }?.toString().orEmpty()
    val wide = maxOf(last.length, typed.digits.length, 5) - if (typed.tenths) 1 else 0
    Column(modifier.fillMaxWidth().clearAndSetSemantics { contentDescription = says }) {
        if (before != null) Digits(before.first, columns(last, typed.tenths, wide), false)
        Digits(now, columns(typed.digits, typed.tenths, wide), true)
    }
}

@Composable
private fun Digits(words: String, columns: List<String>, heavy: Boolean) {
    val type = LocalType.current
    val tokens = LocalTokens.current
    val name = @Composable { modifier: Modifier ->
        Text(words, modifier, style = if (heavy) type.line else type.help, color = tokens.ink)
    }
    if (LocalDensity.current.fontScale > 1.15f) {
        Column(Modifier.fillMaxWidth()) {
            name(Modifier)
            Row(Modifier.align(Alignment.End)) { Columns(columns, heavy) }
        }
    } else {
        Row(Modifier.fillMaxWidth(), verticalAlignment = Alignment.CenterVertically) {
            name(Modifier.weight(1f).padding(end = 8.dp))
            Columns(columns, heavy)
        }
    }
}

@Composable
private fun RowScope.Columns(columns: List<String>, heavy: Boolean) {
    val tokens = LocalTokens.current
    val type = LocalType.current
    // One width for every digit of both rows, light or heavy, typed or still to come.
    val (wide, narrow) = with(LocalDensity.current) { 23.sp.toDp() to 10.sp.toDp() }
    // Digits reach nowhere below their line: what is between the rows the keys under them need.
    val high = with(LocalDensity.current) { type.figure.fontSize.toDp() }
    for (column in columns) {
        val digit = column != "."
        Text(
            column,
            Modifier.width(if (digit) wide else narrow).height(high).drawBehind {
                val y = size.height - 1.dp.toPx()
                val inset = 1.dp.toPx()
                if (heavy && digit) drawLine(tokens.ink, Offset(inset, y), Offset(size.width - inset, y), 2.dp.toPx())
            }.clipToBounds().wrapContentHeight(unbounded = true),
            style = if (heavy) type.figure else type.figure.copy(fontWeight = type.text.fontWeight),
            textAlign = TextAlign.Center,
            color = tokens.ink,
        )
    }
}
