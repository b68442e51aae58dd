package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.assertIsEnabled
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.hasAnyAncestor
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performScrollTo
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.How
import app.sumpbook.ui.frame.MAIN
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs

/** Figures a line offers to take, and the limits that stand beside what is measured. */
@OptIn(ExperimentalTestApi::class)
class FigureTest {
    private val cab = Cab()
    private val draft = cab.walk("TH-03")

    @AfterTest
    fun clear() = cab.close()

    private fun SkikoComposeUiTest.type(digits: String) = with(cab) { for (digit in digits) find(digit.toString()) }

    private fun SkikoComposeUiTest.atTheThumb(words: String) = onNode(hasText(words) and hasAnyAncestor(hasTestTag(MAIN)))

    private fun line(stop: String, id: String) = Place.Defect(cab.unit("TH-03"), draft, cab.stop(draft, stop), id)

    @Test
    fun `a tread is given, held against its rule, and kept as OK although it breaks it`() = with(cab) {
        val stop = stop(draft, "left-side")
        at(line("left-side", "tread-front/left")) {
            press("Give the figure")
            onNodeWithText("at least 4/32 in: United States", substring = true).assertExists()
            onNodeWithText("Keep the figure").assertIsNotEnabled()
            type("6")
            onNodeWithText("keeps the rule, at least 4/32 in: United States", substring = true).assertExists()
            atTheThumb("OK, 6/32 in").assertIsEnabled()
            picture("figure-kept-by-rule")
        }
        at(line("left-side", "tread-front/left")) {
            press("Give the figure")
            type("3")
            onNodeWithText("breaks the rule, at least 4/32 in: United States", substring = true).assertExists()
            // What is nearer to the thumb changes with the verdict; both take one tap.
            atTheThumb("It is a defect").assertIsEnabled()
            picture("figure-breaks-rule")
            press("OK, 3/32 in")
            val kept = checkNotNull(answer(draft, stop, "tread-front/left"))
            assertEquals(AnswerKind.OK to How.OFFERED, kept.answer to kept.figures.single().how)
            assertEquals(3L to "in/32", kept.figures.single().figure.let { it.digits to it.unit })
            assertIs<Place.Today>(back.top)
        }
    }

    @Test
    fun `the same figure goes along with a defect`() = with(cab) {
        val stop = stop(draft, "left-side")
        at(line("left-side", "tread-front/left")) {
            press("Give the figure")
            type("3")
            press("It is a defect")
            onNodeWithText("breaks the rule, at least 4/32 in", substring = true).assertExists()
            press("below the limit")
            press("Keep defect")
            val kept = checkNotNull(answer(draft, stop, "tread-front/left"))
            assertEquals(AnswerKind.DEFECT to 3L, kept.answer to kept.figures.single().figure.digits)
        }
    }

    @Test
    fun `a tire's pressure has no rule and is only written down`() = with(cab) {
        at(line("left-side", "tyre-press/left")) {
            press("Give the figure")
            type("95")
            picture("figure-no-rule")
            press("OK, 95 psi")
            assertEquals(95L, answer(draft, stop(draft, "left-side"), "tyre-press/left")?.figures?.single()?.figure?.digits)
        }
    }

    @Test
    fun `a line without such a figure offers none`() = with(cab) {
        at(line("cab-off", "mirrors")) { onNodeWithText("Give the figure").assertDoesNotExist() }
        at(line("cab-off", "papers")) { onNodeWithText("Give the figure").assertDoesNotExist() }
    }

    @Test
    fun `the rule and its limit stand under the chips before the tap`() = with(cab) {
        at(Place.Stop(unit("TH-03"), draft, stop(draft, "leak-applied"))) {
            onNodeWithText("at most 4 psi: United States, driver test (modernized)").assertIsDisplayed()
            press("Start 60 s")
            picture("drop-limits")
            onNodeWithText("at most 4 psi: United States, driver test (modernized)").assertIsDisplayed()
            onNodeWithText("less than 4 psi: United States, driver test (older)").performScrollTo().assertIsDisplayed()
        }
    }

    @Test
    fun `the build-up has its limit there as well`() = with(cab) {
        at(Place.Stop(unit("TH-03"), draft, stop(draft, "warning-build-up"))) {
            onNodeWithText("at most 45 s: United States, driver test (modernized)").performScrollTo().assertIsDisplayed()
            picture("build-up-limits")
        }
    }

    @Test
    fun `who reads metric gives a tread in millimetres, and the same rule is held against it`() = with(cab) {
        at(line("left-side", "tread-front/left"), OwnWay(metric = true)) {
            press("Give the figure")
            // 4/32 in are 3.175 mm.
            type("31")
            onNodeWithText("breaks the rule, at least 4/32 in (3.2 mm): United States", substring = true).assertExists()
            press("OK, 3.1 mm")
            assertEquals(31L to "mm", answer(draft, stop(draft, "left-side"), "tread-front/left")?.figures?.single()?.figure?.let { it.digits to it.unit })
        }
        at(line("left-side", "tyre-press/left"), OwnWay(metric = true)) {
            press("Give the figure")
            type("655")
            onNodeWithText("OK, 655 kPa").assertExists()
        }
    }

    @Test
    fun `in Spanish too`() = with(cab) {
        at(line("warning-build-up", "spring-pop"), OwnWay("es")) {
            press("Dar la cifra")
            type("50")
            picture("figure-es")
            assertEquals(1, onAllNodes(hasText("Bien, 50 psi")).fetchSemanticsNodes().size)
        }
    }
}
