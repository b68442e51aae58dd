package app.sumpbook.ui.control

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.rememberScrollState
import androidx.compose.foundation.verticalScroll
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.toPixelMap
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.assert
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.assertIsOff
import androidx.compose.ui.test.assertIsOn
import androidx.compose.ui.test.assertIsSelected
import androidx.compose.ui.test.captureToImage
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.unit.dp
import app.sumpbook.core.Glass
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.mark.Theme
import app.sumpbook.ui.onScreen
import app.sumpbook.ui.picture
import app.sumpbook.ui.theme.LocalStill
import app.sumpbook.ui.words.OwnWay
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertNull
import kotlin.test.assertTrue

@OptIn(ExperimentalTestApi::class)
class ControlsTest {
    /** One of everything, as a narrow screen stacks them. */
    @Composable
    private fun Gallery(spanish: Boolean) = Column(
        Modifier.padding(8.dp).verticalScroll(rememberScrollState()), Arrangement.spacedBy(Gap),
    ) {
        SightGlass(Glass.Percent(38u), 45..55) {}
        GlassSteps(Glass.Percent(38u)) {}
        Strip(if (spanish) "Piso nivelado. Parado 9 h, medido." else "Level ground. Stopped 9 h, timed.") {}
        Line(if (spanish) "Banda de rodamiento" else "Tread, steer axle", under = "4/32", said = if (spanish) "defecto" else "defect", defect = true) {}
        CheckLine(if (spanish) "Purga terminada, sin ruido" else "Blow-down ended, silent", true) {}
        Chips { for (word in if (spanish) listOf("rajado", "flojo", "no se ve") else listOf("cracked", "loose", "no view")) Chip(word, false) {} }
        WordsField(if (spanish) "Al siguiente" else "To next driver", "TH-01") {}
        MeterFigure("Tue 16:15" to 12_110L, if (spanish) "Ahora" else "Now", MeterTyped("12262"), "")
        Keypad({}, {})
        SecondaryRow {
            SecondaryButton(if (spanish) "Escribir otra vez" else "Type again") {}
            SecondaryButton(if (spanish) "¿Cuál medidor?" else "Which meter?") {}
        }
        MainButton(if (spanish) "Los 8 vistos: bien" else "All 8 looked at: OK") {}
        MainButton(if (spanish) "Firmar fin de día" else "Sign end of day", whyNot = if (spanish) "Faltan 3 abajo" else "3 more below", onEarly = {}) {}
    }

    @Test
    fun `targets, gaps and text hold at every size, width and language`() {
        for (wide in listOf(320, 360, 411)) {
            for (text in listOf(1f, 1.3f, 1.6f, 2f)) {
                for (language in listOf("en", "es")) {
                    onScreen(wide, 2_600, text) {
                        setContent { DesktopFace(OwnWay(language)) { Gallery(language == "es") } }
                        assertTargets("$wide dp, text $text, $language")
                        assertText("$wide dp, text $text, $language")
                    }
                }
            }
        }
    }

    @Test
    fun `pictures in all four themes, to be looked at`() {
        for (theme in Theme.ALL) {
            onScreen(360, 1_500) {
                setContent { DesktopFace(OwnWay(), theme.dark, theme.high) { Gallery(false) } }
                picture("controls-${if (theme.high) "high-" else ""}${if (theme.dark) "dark" else "light"}")
            }
        }
    }

    @Test
    fun `the main button tells why it takes no press, and takes none`() = onScreen {
        var pressed = 0
        var whyNot by mutableStateOf<String?>("Two signs first.")
        setContent { DesktopFace { MainButton("Add a pour", whyNot = whyNot) { pressed++ } } }
        onNodeWithText("Two signs first.").assertExists()
        onNodeWithText("Add a pour").assertIsNotEnabled()
            .assert(SemanticsMatcher.expectValue(SemanticsProperties.StateDescription, "Two signs first."))
            .performClick()
        assertEquals(0, pressed)
        whyNot = null
        waitForIdle()
        onNodeWithText("Two signs first.").assertDoesNotExist()
        onNodeWithText("Add a pour").performClick()
        assertEquals(1, pressed)
    }

    @Test
    fun `what an early press does is never the act itself`() = onScreen {
        var pressed = 0
        var turned = 0
        setContent { DesktopFace { MainButton("All 8", whyNot = "3 more below", onEarly = { turned++ }) { pressed++ } } }
        onNodeWithText("All 8").performClick()
        assertEquals(0 to 1, pressed to turned)
    }

    @Test
    fun `keys type from the right and take back from the right`() = onScreen {
        var typed by mutableStateOf(MeterTyped())
        setContent { DesktopFace { Keypad({ typed = typed.with(it) }, { typed = typed.erased() }) } }
        for (digit in "12262") onNodeWithText(digit.toString()).performClick()
        assertEquals(12_262L, typed.inTenths)
        onNodeWithContentDescription("Erase the last digit").performClick()
        assertEquals(1_226L, typed.inTenths)
    }

    @Test
    fun `a meter's figure has its tenth last, or none`() {
        assertNull(MeterTyped().inTenths)
        assertEquals(MeterTyped(), MeterTyped().with(0), "a figure does not begin with nothing")
        assertEquals(50L, MeterTyped(tenths = false).with(5).inTenths)
        assertEquals(9_999_999L, (0..9).fold(MeterTyped()) { typed, _ -> typed.with(9) }.inTenths, "no more digits than a meter has")
        assertEquals(listOf(" ", " ", " ", "0", ".", "7"), columns("7", tenths = true, wide = 4))
        assertEquals(listOf("1", "2", "2", "6", ".", "2"), columns("12262", tenths = true, wide = 4))
        assertEquals(listOf(" ", "8", "4", "2", "1", "3"), columns("84213", tenths = false, wide = 6))
    }

    @Test
    fun `a chip and a sign say what they are`() = onScreen {
        var seen by mutableStateOf(false)
        setContent {
            DesktopFace {
                Column {
                    Chip("loose", chosen = true) {}
                    CheckLine("Gauge reads 0", seen) { seen = it }
                }
            }
        }
        onNodeWithText("loose").assertIsSelected()
        onNodeWithText("Gauge reads 0").assertIsOff().performClick().assertIsOn()
    }

    @Test
    fun `the ring counts down to nothing and says so only then`() = onScreen {
        var left by mutableStateOf(41_000L)
        setContent { DesktopFace { HoldRing(left, 60_000, "the needle settles") } }
        onNodeWithText("0:41").assertExists()
        left = 200
        waitForIdle()
        onNodeWithText("0:01").assertExists()
        onNodeWithContentDescription("the needle settles").assert(SemanticsMatcher.keyNotDefined(SemanticsProperties.LiveRegion))
        left = 0
        waitForIdle()
        onNodeWithText("0:00").assertExists()
        onNodeWithContentDescription("the needle settles").assert(SemanticsMatcher.keyIsDefined(SemanticsProperties.LiveRegion))
    }

    @Test
    fun `the ring blinks twice when it runs out, slower than twice a second, and then stands`() = onScreen {
        var left by mutableStateOf(200L)
        setContent { DesktopFace { HoldRing(left, 60_000, "the needle settles") } }
        mainClock.autoAdvance = false
        left = 0
        val seen = rings(2_000)
        val dark = seen.indices.filter { !seen[it].second && (it == 0 || seen[it - 1].second) }.map { seen[it].first }
        assertEquals(2, dark.size, "$seen")
        assertTrue(dark[1] - dark[0] > 500, "$dark")
        assertTrue(seen.takeLast(5).all { it.second }, "it stands in the end: $seen")
    }

    @Test
    fun `who asked for no motion, or comes when it is out already, sees it stand`() = onScreen {
        var left by mutableStateOf(200L)
        setContent { DesktopFace { CompositionLocalProvider(LocalStill provides true) { HoldRing(left, 60_000, "the needle settles") } } }
        mainClock.autoAdvance = false
        left = 0
        assertTrue(rings(1_500).all { it.second })
    }

    /** Whether the ring is drawn heavy, at moments of so long. */
    private fun SkikoComposeUiTest.rings(ms: Long): List<Pair<Long, Boolean>> {
        val until = mainClock.currentTime + ms
        return generateSequence {
            mainClock.advanceTimeBy(50)
            waitForIdle()
            val ring = onNodeWithContentDescription("the needle settles").captureToImage().toPixelMap()
            // In the middle of the heavy line, at its top.
            val line = ring[ring.width / 2, (6 * density.density).toInt()]
            (mainClock.currentTime to (line.red < 0.3f && line.alpha > 0.5f)).takeIf { it.first < until }
        }.toList()
    }

    @Test
    fun `a strip that opens nothing is no button`() = onScreen {
        setContent { DesktopFace { Strip("Level ground.") } }
        onNodeWithText("Level ground.").assert(SemanticsMatcher.keyNotDefined(SemanticsActions.OnClick))
    }
}
