package app.sumpbook.ui.theme

import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.luminance
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** Contrast as WCAG 2 has it: relative luminance, the ratio cut to two places. Computed from the theme, never typed. */
class ContrastTest {
    private val schemes = mapOf(
        "light" to LightTokens, "dark" to DarkTokens, "high light" to HighLightTokens, "high dark" to HighDarkTokens,
    )

    private fun contrast(one: Color, other: Color): Int {
        val (light, dark) = listOf(one.luminance(), other.luminance()).sortedDescending()
        return ((light + 0.05f) / (dark + 0.05f) * 100 + 1e-3f).toInt()
    }

    private fun floor(hundredths: Int, pairs: Tokens.() -> Map<String, Pair<Color, Color>>) {
        for ((scheme, tokens) in schemes) {
            for ((what, pair) in tokens.pairs()) {
                val found = contrast(pair.first, pair.second)
                assertTrue(found >= hundredths, "$scheme, $what: $found hundredths, least $hundredths")
            }
        }
    }

    @Test
    fun `text has 7 to 1 on every ground it stands on`() = floor(700) {
        val grounds = mapOf("paper" to paper, "sheet" to sheet, "wash" to wash)
        val inks = mapOf("ink" to ink, "soft" to soft, "act" to act, "stop" to stop)
        inks.flatMap { (name, color) -> grounds.map { (on, ground) -> "$name on $on" to (color to ground) } }.toMap() +
            mapOf("onact on act" to (onAct to act), "onstop on stop" to (onStop to stop), "sheet on ink" to (sheet to ink))
    }

    @Test
    fun `what is drawn has 3 to 1`() = floor(300) {
        mapOf(
            "rule on paper" to (rule to paper), "rule on sheet" to (rule to sheet), "rule on wash" to (rule to wash),
            "oil on paper" to (oil to paper), "oil on sheet" to (oil to sheet), "inoil on oil" to (inOil to oil),
        )
    }

    @Test
    fun `the figures of the palette are those it was chosen by`() {
        assertEquals(1424, contrast(LightTokens.ink, LightTokens.paper))
        assertEquals(718, contrast(LightTokens.soft, LightTokens.wash))
        assertEquals(330, contrast(LightTokens.rule, LightTokens.wash))
        assertEquals(756, contrast(DarkTokens.stop, DarkTokens.wash))
        assertEquals(2100, contrast(HighDarkTokens.ink, HighDarkTokens.paper))
        assertEquals(387, contrast(HighLightTokens.inOil, HighLightTokens.oil))
    }

    @Test
    fun `act and stop are alike in grey, so that no hue may tell alone`() {
        for (tokens in schemes.values) assertTrue(contrast(tokens.act, tokens.stop) < 150)
    }
}
