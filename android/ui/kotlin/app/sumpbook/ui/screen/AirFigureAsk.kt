package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import app.sumpbook.core.TextAsk
import app.sumpbook.core.TextValue
import app.sumpbook.core.text
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.LocalOwnWay
import java.math.BigDecimal

/**
 * One figure of a job, on the app's own keys. It fills from the right, with as many decimals as its unit has.
 *
 * @param keep takes what was said; none: the figure is left out
 */
@Composable
fun AirFigureAsk(door: String, asked: AirFieldWords, goBack: () -> Unit, keep: (String?) -> Unit) {
    val row = asked.row
    var digits by rememberSaveable { mutableStateOf("") }
    var below by rememberSaveable { mutableStateOf(false) }
    val figure = typed(digits, row.places.toInt(), below)
    val shown = withUnit(figure ?: "-", row.unit)
    ScreenFrame(
        header = { DoorHeader(door, asked.name, goBack) },
        strips = { asked.wrong?.let { Strip(it) } },
        secondary = {
            if (row.belowZero) SecondaryButton(words("air-below-zero")) { below = !below }
            if (row.said != null) SecondaryButton(words("air-clear")) { keep(null) }
        },
        main = { MainPress(words("air-keep", "figure" to shown), if (figure == null) words("air-type-it") else null) { keep(figure) } },
    ) {
        asked.said?.takeIf { asked.wrong == null }?.let { Text(it, style = LocalType.current.help) }
        if (asked.offered.isNotEmpty()) Chips { asked.offered.forEach { (said, words) -> Chip(words, row.said == said) { keep(said) } } }
        Text(shown, style = LocalType.current.figure)
        Keypad({ if (digits.length < MOST_DIGITS) digits = (digits + it).trimStart('0').ifEmpty { "0" } }, { digits = digits.dropLast(1) })
    }
}

/** "75" with three decimals is 0.075; none while nothing is typed. */
private fun typed(digits: String, places: Int, below: Boolean): String? {
    val number = digits.toLongOrNull() ?: return null
    return BigDecimal.valueOf(if (below) -number else number, places).toPlainString()
}

@Composable
private fun words(key: String, vararg values: Pair<String, String>): String =
    text(LocalOwnWay.current.language, TextAsk(key, values.associate { (name, value) -> name to TextValue.Words(value) }))

/** No figure of a job has more. */
private const val MOST_DIGITS = 6
