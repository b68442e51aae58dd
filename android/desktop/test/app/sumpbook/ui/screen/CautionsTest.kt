package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SemanticsNodeInteraction
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performScrollTo
import app.sumpbook.core.TextAsk
import app.sumpbook.core.text
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertTrue

/** Every caution of a stop is there to be read, without a press, at every stop. */
@OptIn(ExperimentalTestApi::class)
class CautionsTest {
    private val cab = Cab().apply { hasWalked(person()) }
    private val draft = cab.walk("TH-01")

    @AfterTest
    fun clear() = cab.close()

    private fun top(node: SemanticsNodeInteraction) = node.fetchSemanticsNode().positionInRoot.y

    @Test
    fun `every caution of every stop stands on its screen`() = with(cab) {
        val stops = phone.stop(draft, null, emptyList(), 0u)!!.of.toInt()
        val walked = (1..stops).mapNotNull { phone.stop(draft, "$it", emptyList(), 0u) }
        var seen = 0
        for (stop in walked.distinctBy { it.label }) {
            val cautions = stop.lines.mapNotNull { it.caution }.distinct()
            at(Place.Stop(unit("TH-01"), draft, stop.label)) {
                for (caution in cautions) {
                    val words = text("en", TextAsk("caution-$caution", emptyMap()))
                    val node = onNodeWithText(words, substring = true)
                    runCatching { node.performScrollTo() }
                    node.assertIsDisplayed()
                    seen++
                }
            }
        }
        assertTrue(seen > 20, "$seen cautions")
    }

    @Test
    fun `with room they stand before the lines, in a full frame after them`() = with(cab) {
        val hood = Place.Stop(unit("TH-01"), draft, stop(draft, "under-hood"))
        at(hood) {
            picture("cautions-full")
            assertTrue(top(onNodeWithText("No plain water when it can freeze.")) > top(onNodeWithText("Engine hoses")), "after the lines")
            press("Cautions")
            picture("cautions-full-hints")
            assertTrue(top(onNodeWithText("No plain water when it can freeze.")) < top(onNodeWithText("Engine hoses")), "before the lines")
        }
        at(hood, high = 1_200) {
            assertTrue(top(onNodeWithText("No plain water when it can freeze.")) < top(onNodeWithText("Engine oil")), "a taller phone has room")
        }
    }
}
