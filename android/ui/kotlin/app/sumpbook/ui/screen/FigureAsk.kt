package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.theme.LocalType
import java.math.BigDecimal

/**
 * A figure that is asked for.
 *
 * @property places decimals: it fills from the right
 * @property said what stands for it now, in words; none: nothing
 * @property wrong what is wrong with that
 * @property offered what is often meant, with its words
 * @property chosen the one of them that was taken
 */
data class FigureWanted(
    val name: String,
    val unit: String,
    val places: Int,
    val belowZero: Boolean,
    val said: String?,
    val wrong: String? = null,
    val offered: List<Pair<String, String>> = emptyList(),
    val chosen: String? = null,
)

/**
 * One figure, on the app's own keys.
 *
 * @param clear leaves it out again; none: there is nothing to leave out
 */
@Composable
fun FigureAsk(door: String, wanted: FigureWanted, goBack: () -> Unit, clear: (() -> Unit)?, keep: (String) -> Unit) {
    var digits by rememberSaveable { mutableStateOf("") }
    var below by rememberSaveable { mutableStateOf(false) }
    val figure = typed(digits, wanted.places, below)
    val shown = withUnit(figure ?: "-", wanted.unit)
    val told by seen(shown) { figureAskWords(shown) }
    val words = (told as? Told.Got)?.it ?: return
    // The button's words are of the figure before until the core has given those of this one.
    val ready = figure != null && words.of == shown
    ScreenFrame(
        header = { DoorHeader(door, wanted.name, goBack = goBack) },
        strips = { wanted.wrong?.let { Strip(it) } },
        secondary = {
            if (wanted.belowZero) SecondaryButton(words.belowZero) { below = !below }
            if (clear != null) SecondaryButton(words.clear, onPress = clear)
        },
        main = { MainPress(words.keep, if (ready) null else words.typeIt, whyAbove = figure == null) { if (figure != null) keep(figure) } },
    ) {
        wanted.said?.takeIf { wanted.wrong == null }?.let { Text(it, style = LocalType.current.help) }
        if (wanted.offered.isNotEmpty()) Chips { wanted.offered.forEach { (said, words) -> Chip(words, wanted.chosen == said) { keep(said) } } }
        Text(shown, style = LocalType.current.figure)
        Keypad({ if (digits.length < MOST_DIGITS) digits = (digits + it).trimStart('0').ifEmpty { "0" } }, { digits = digits.dropLast(1) })
    }
}

/** "75" with three decimals is 0.075; none while nothing is typed. */
private fun typed(digits: String, places: Int, below: Boolean): String? {
    val number = digits.toLongOrNull() ?: return null
    return BigDecimal.valueOf(if (below) -number else number, places).toPlainString()
}

/** What its buttons say of a figure as it is typed. */
private data class FigureAskWords(val of: String, val belowZero: String, val clear: String, val keep: String, val typeIt: String)

private fun Reader.figureAskWords(of: String) =
    FigureAskWords(of, words("air-below-zero"), words("air-clear"), words("air-keep", "figure" to of), words("air-type-it"))

/** "100 psi"; a bare number by itself. */
fun withUnit(value: String, unit: String): String = if (unit.isEmpty()) value else "$value $unit"

/** No figure has more. */
private const val MOST_DIGITS = 6
