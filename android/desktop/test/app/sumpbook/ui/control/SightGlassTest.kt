package app.sumpbook.ui.control

import androidx.compose.foundation.layout.Column
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.SemanticsNodeInteraction
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.assert
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performSemanticsAction
import androidx.compose.ui.test.performTouchInput
import app.sumpbook.core.Glass
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.onScreen
import app.sumpbook.ui.words.OwnWay
import kotlin.test.Test
import kotlin.test.assertEquals

@OptIn(ExperimentalTestApi::class)
class SightGlassTest {
    private var given by mutableStateOf<Glass?>(null)
    private val calls = ArrayList<Glass>()

    private fun worked(language: String = "en", block: suspend SkikoComposeUiTest.(SemanticsNodeInteraction) -> Unit) = onScreen(328, 400) {
        setContent {
            DesktopFace(OwnWay(language)) {
                Column {
                    SightGlass(given, 45..55) { given = it; calls += it }
                    GlassSteps(given) { given = it; calls += it }
                }
            }
        }
        block(onNodeWithContentDescription(if (language == "es") "Mirilla" else "Sight glass"))
    }

    private fun says(words: String) = SemanticsMatcher.expectValue(SemanticsProperties.StateDescription, words)

    /** The middle of a level in the glass's box: two pixels a dp. */
    private fun at(percent: Float) = Offset(240f, (208f - 1.76f * percent) * 2)

    @Test
    fun `nothing is given before the first touch, which sets the level`() = worked { glass ->
        glass.assert(says("level not given"))
        assertEquals(emptyList<Glass>(), calls)
        glass.performTouchInput { down(at(38f)); up() }
        glass.assert(says("38 percent of the glass, under the middle band 45 to 55"))
        assertEquals(listOf<Glass>(Glass.Percent(38u)), calls)
    }

    @Test
    fun `a touch later does not change it, a drag moves it from where it was`() = worked { glass ->
        given = Glass.Percent(38u)
        glass.performTouchInput { down(at(90f)); up() }
        assertEquals(Glass.Percent(38u) as Glass?, given)
        glass.performTouchInput { down(at(90f)); moveTo(at(95f)); moveTo(at(104f)); up() }
        assertEquals(Glass.Percent(52u) as Glass?, given)
        glass.assert(says("52 percent of the glass, in the middle band 45 to 55"))
    }

    @Test
    fun `no drag leaves the glass`() = worked { glass ->
        given = Glass.Percent(90u)
        glass.performTouchInput { down(at(50f)); moveTo(at(110f)); up() }
        assertEquals(Glass.Percent(100u) as Glass?, given)
        glass.assert(says("100 percent of the glass, over the middle band 45 to 55"))
    }

    @Test
    fun `steps of one percent, and out of view either way`() = worked { glass ->
        given = Glass.Percent(50u)
        onNodeWithContentDescription("1 percent less").performClick()
        assertEquals(Glass.Percent(49u) as Glass?, given)
        onNodeWithContentDescription("1 percent more").performClick().performClick()
        assertEquals(Glass.Percent(51u) as Glass?, given)
        onNodeWithText("Below view").performClick()
        glass.assert(says("Below view"))
        onNodeWithText("Above view").performClick()
        glass.assert(says("Above view"))
    }

    @Test
    fun `held, a step is of five`() = worked { _ ->
        given = Glass.Percent(50u)
        mainClock.autoAdvance = false
        val step = onNodeWithContentDescription("1 percent more")
        step.performTouchInput { down(center) }
        mainClock.advanceTimeBy(1_100)
        step.performTouchInput { up() }
        mainClock.autoAdvance = true
        waitForIdle()
        assertEquals(Glass.Percent(60u) as Glass?, given, "two steps of five, and the lifting adds none")
    }

    @Test
    fun `a reader of the screen can set it and say that it is out of view`() = worked { glass ->
        glass.performSemanticsAction(SemanticsActions.SetProgress) { it(47.4f) }
        assertEquals(Glass.Percent(47u) as Glass?, given)
        val actions = glass.fetchSemanticsNode().config[SemanticsActions.CustomActions]
        assertEquals(listOf("Below view", "Above view"), actions.map { it.label })
        actions.first().action()
        assertEquals(Glass.BelowView as Glass?, given)
    }

    @Test
    fun `it says the same in Spanish`() = worked("es") { glass ->
        glass.assert(says("nivel sin dar"))
        given = Glass.Percent(38u)
        waitForIdle()
        glass.assert(says("38 por ciento de la mirilla, debajo del medio, 45 a 55"))
    }

    @Test
    fun `read only, it cannot be set`() = onScreen(328, 400) {
        setContent { DesktopFace { SightGlass(Glass.Percent(38u), 45..55) } }
        onNodeWithContentDescription("Sight glass").assert(SemanticsMatcher.keyNotDefined(SemanticsActions.SetProgress))
    }
}
