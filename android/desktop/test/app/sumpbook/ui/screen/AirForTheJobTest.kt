package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performScrollTo
import app.sumpbook.ui.control.assertTargets
import app.sumpbook.ui.control.assertText
import app.sumpbook.ui.mark.Theme
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs

/** Air for the job on the phone: invented tools, outcomes worked by rule. */
@OptIn(ExperimentalTestApi::class)
class AirForTheJobTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    private fun SkikoComposeUiTest.give(digits: String, take: String) = with(cab) {
        for (digit in digits) find(digit.toString())
        press("Take $take")
    }

    private fun SkikoComposeUiTest.says(words: String) = onNode(hasText(words, substring = true)).assertExists()

    @Test
    fun `from the unit's More, one wanted figure after the other, and what is left over`() = with(cab) {
        at(Place.Unit(unit("TH-01"))) {
            press("More")
            find("Air for the job")
            assertIs<Place.AirForTheJob>(back.top)
            says("Give the delivery, or a unit that has one on record")
            picture("air-job-begun")
            // The unit has its delivery on record: the pressure it holds is asked first.
            press("Give: Pressure it holds")
            onNodeWithText("Take - psi").assertIsNotEnabled()
            picture("air-job-keys")
            give("100", "100 psi")
            press("Give: Takes, each")
            give("80", "80 cfm")
            press("Give: Wants at the tool")
            give("90", "90 psi")
            press("Give: Inside diameter")
            find("3/4 in")
            press("Give: Length")
            give("50", "50 ft")
            says("Taken by the tools: 80 cfm")
            says("Left over: about 105 cfm")
            says("No altitude given: worked out for sea level. Higher up there is less.")
            says("29 CFR 1926.302(b)(7)")
            picture("air-job-answered")
            val before = kinds().size
            press("Back to the unit")
            assertIs<Place.Unit>(back.top)
            assertEquals(before, kinds().size)
        }
    }

    @Test
    fun `a figure below zero, one left out again, and a tool of which nothing is known but its pressure`() = with(cab) {
        at(Place.AirForTheJob(unit("TH-01"))) {
            find("Temperature at the intake")
            for (digit in "12") find(digit.toString())
            press("Below zero")
            press("Take -12 °F")
            onNodeWithText("-12 °F").assertExists()
            find("Temperature at the intake")
            press("Leave it out")
            onNodeWithText("-12 °F").assertDoesNotExist()
            find("Pressure it holds")
            give("100", "100 psi")
            find("Wants at the tool")
            give("90", "90 psi")
            says("Taken by the tools: not known; what the tool takes is wanted")
            says("A tool without what it takes: it takes air all the same.")
            find("Cleaning with air is part of the job")
            says("Cleaning air wants a chip guard and eye protection.")
            find("Another tool")
            onNodeWithText("Tool 2").performScrollTo().assertExists()
            picture("air-job-warned")
        }
    }

    @Test
    fun `nothing is cut and nothing too small, narrow, in Spanish, with the largest text`() = with(cab) {
        val unit = unit("TH-01")
        for ((wide, high, text) in listOf(Triple(320, 640, 2f), Triple(360, 800, 1f), Triple(800, 360, 1.3f))) {
            val theme = Theme(dark = wide == 320, high = wide == 800)
            at(Place.AirForTheJob(unit), OwnWay("es", metric = true, leftThumb = wide == 800), wide, high, text, theme) {
                assertTargets("air for the job, $wide")
                assertText("air for the job, $wide")
                picture("air-job-$wide-es")
                find("Diámetro interior")
                assertTargets("a figure of it, $wide")
                assertText("a figure of it, $wide")
                picture("air-job-figure-$wide-es")
                find("19 mm")
                onNode(hasText("19 mm")).assertExists()
            }
        }
    }
}
