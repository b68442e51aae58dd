package app.sumpbook.ui.screen

import androidx.compose.runtime.Composable
import app.sumpbook.core.Figure
import app.sumpbook.core.Warmth
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.desk.Reader

/** The words beside a level of hot or cold oil. */
data class OilWarmthWords(val warmth: Map<Warmth, String>, val temperature: String)

fun Reader.oilWarmthWords() = OilWarmthWords(
    warmth = Warmth.entries.associateWith { words("warmth-${it.name.lowercase()}") },
    temperature = words("air-oil"),
)

/** The sign of a display's degrees where volumes are read so. */
fun degreesSign(metric: Boolean): String = if (metric) "°C" else "°F"

/** Whole degrees, as a display shows them. */
fun degrees(typed: String, metric: Boolean) = Figure(typed.toLong(), 0u, if (metric) "degC" else "degF")

/** Cold or hot, and for hot oil its temperature, which may be left out: hot oil stands higher in the glass. */
@Composable
fun OilWarmth(words: OilWarmthWords, warmth: Warmth?, said: String?, say: (Warmth) -> Unit, ask: () -> Unit) {
    Chips { words.warmth.forEach { (one, name) -> Chip(name, warmth == one) { say(one) } } }
    if (warmth == Warmth.HOT) Line(words.temperature, said = said, onPress = ask)
}
