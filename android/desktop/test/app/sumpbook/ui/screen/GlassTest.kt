package app.sumpbook.ui.screen

import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.isEnabled
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performSemanticsAction
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Glass
import app.sumpbook.ui.control.assertKeysWhole
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs

@OptIn(ExperimentalTestApi::class)
class GlassTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    @Test
    fun `the stop's level and the lines beside it are kept by one tap`() = with(cab) {
        val draft = walk("TH-01")
        val label = stop(draft, "glass")
        at(Place.Stop(unit("TH-01"), draft, label), high = 1_300) {
            picture("glass-stop-empty")
            waitUntil(timeoutMillis = 5_000) { onAllNodes(hasText("Drag to where the oil stands.")).fetchSemanticsNodes().isNotEmpty() }
            onNodeWithText("Keep the level").assertIsNotEnabled()
            onNodeWithContentDescription("Sight glass").performSemanticsAction(SemanticsActions.SetProgress) { it(38f) }
            settled()
            picture("glass-stop")
            press("38 %, other 2 OK")
            val level = checkNotNull(answer(draft, label, "oil-level"))
            assertEquals(AnswerKind.OK to listOf(38L), level.answer to level.figures.map { it.figure.digits })
            assertEquals(AnswerKind.OK, answer(draft, label, "oil-look")?.answer)
            assertIs<Place.Stop>(back.top)
        }
    }

    @Test
    fun `in the walk the whole glass and the steps beside its drag lie in the frame`() = with(cab) {
        val draft = walk("TH-01")
        for (given in listOf(null, 38f)) {
            at(Place.Stop(unit("TH-01"), draft, stop(draft, "glass")), high = 776) {
                if (given != null) onNodeWithContentDescription("Sight glass").performSemanticsAction(SemanticsActions.SetProgress) { it(given) }
                settled()
                picture("glass-stop-frame")
                for (what in listOf("Sight glass", "1 percent less", "1 percent more")) {
                    val node = onNodeWithContentDescription(what).fetchSemanticsNode()
                    assertEquals(node.size.height.toFloat(), node.boundsInRoot.height, "$what is cut")
                }
            }
        }
    }

    @Test
    fun `below view is a finding that locks the air, and says so before it is kept`() = with(cab) {
        val draft = walk("TH-01")
        val label = stop(draft, "glass")
        at(Place.Stop(unit("TH-01"), draft, label), high = 1_300) {
            find("Below view")
            onNodeWithText("This locks AIR until the shop certifies it.").assertExists()
            waitUntil(timeoutMillis = 5_000) { onAllNodes(hasText("below view, other 2 OK") and isEnabled()).fetchSemanticsNodes().isNotEmpty() }
            press("below view, other 2 OK")
            val level = checkNotNull(answer(draft, label, "oil-level"))
            assertEquals(AnswerKind.DEFECT to "below-view", level.answer to level.word)
        }
    }

    @Test
    fun `on a phone's own height it turns to what was not seen before it answers`() = with(cab) {
        val draft = walk("TH-01")
        val label = stop(draft, "glass")
        at(Place.Stop(unit("TH-01"), draft, label)) {
            picture("glass-stop-phone")
            onNodeWithText("Oil look").assertExists()
        }
    }

    @Test
    fun `by itself a level is kept with cold or hot and how it looks`() = with(cab) {
        at(Place.Glass(unit("TH-02"))) {
            picture("one-glass-empty")
            find("Yes, at least 5 minutes")
            onNodeWithContentDescription("Sight glass").performScrollTo().performSemanticsAction(SemanticsActions.SetProgress) { it(61f) }
            settled()
            onNodeWithText("61 %, over the middle by 6 %").assertExists()
            find("cold")
            find("clear")
            picture("one-glass")
            press("Keep 61 %")
            val kept = checkNotNull(phone.unit(unit("TH-02"), person()).oil.last)
            assertEquals(Glass.Percent(61u) as Glass, kept.glass)
            assertEquals(app.sumpbook.core.OilLook.CLEAR, kept.look)
            assertEquals(app.sumpbook.core.How.SAID, kept.stopped?.how)
            assertEquals(app.sumpbook.core.Warmth.COLD, kept.warmth)
        }
    }

    @Test
    fun `by itself, too, the glass and its steps lie whole in the frame`() = with(cab) {
        for (language in listOf("en", "es")) {
            for (level in listOf(null, 61f, 4f)) {
                at(Place.Glass(unit("TH-02")), OwnWay(language), high = 776) {
                    val glass = onNode(SemanticsMatcher.keyIsDefined(SemanticsActions.SetProgress))
                    if (level != null) glass.performSemanticsAction(SemanticsActions.SetProgress) { it(level) }
                    settled()
                    picture("one-glass-frame-$language-$level")
                    assertKeysWhole("one glass, $language, $level")
                    assertEquals(glass.fetchSemanticsNode().size.height.toFloat(), glass.fetchSemanticsNode().boundsInRoot.height, "the glass is cut")
                }
            }
        }
    }

    @Test
    fun `hot, the temperature the display shows is asked and kept with the level`() = with(cab) {
        at(Place.Glass(unit("TH-02"))) {
            find("Yes, at least 5 minutes")
            onNodeWithContentDescription("Sight glass").performScrollTo().performSemanticsAction(SemanticsActions.SetProgress) { it(61f) }
            settled()
            find("hot")
            find("Oil temperature in the receiver")
            for (digit in "176") find(digit.toString())
            press("Take 176 °F")
            onNodeWithText("176 °F").performScrollTo().assertExists()
            picture("one-glass-hot")
            press("Keep 61 %")
            val kept = checkNotNull(phone.unit(unit("TH-02"), person()).oil.last)
            assertEquals(app.sumpbook.core.Figure(176, 0u, "degF"), kept.oilTemperature)
            assertEquals(app.sumpbook.core.Warmth.HOT, kept.warmth)
        }
    }

    @Test
    fun `while it runs nothing is read, unless somebody says that it stands`() = with(cab) {
        phone.recordLine("""{"unit":"TH-02","person":"Amos Tillery","kind":"start-air","body":{}}""")
        at(Place.Glass(unit("TH-02"))) {
            onNodeWithContentDescription("Sight glass").performScrollTo().performSemanticsAction(SemanticsActions.SetProgress) { it(50f) }
            settled()
            onNodeWithText("Never while it runs. Stop it and wait.").assertIsDisplayed()
            onNodeWithText("Keep 50 %").assertIsNotEnabled()
            find("Yes, at least 5 minutes")
            press("Keep 50 %")
            assertEquals(listOf("level-check", "start-air"), kinds().sorted())
        }
    }
}
