package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.onNodeWithText
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

@OptIn(ExperimentalTestApi::class)
class RunningTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    @Test
    fun `figures while it runs are kept, as many as were read`() = with(cab) {
        at(Place.Running(unit("TH-01"))) {
            onNodeWithText("Keep the figures").assertIsNotEnabled()
            find("Pressure under load")
            for (digit in "118") find(digit.toString())
            find("Temperature shown")
            for (digit in "192") find(digit.toString())
            onNodeWithText("118 psi").assertExists()
            picture("running")
            press("Keep the figures")
            assertEquals(listOf("running-numbers"), kinds())
        }
    }

    @Test
    fun `who reads metric is asked in kilopascals and degrees Celsius`() = with(cab) {
        at(Place.Running(unit("TH-01")), OwnWay(metric = true)) {
            find("Pressure under load")
            for (digit in "810") find(digit.toString())
            assertTrue(onAllNodes(hasText("810 kPa")).fetchSemanticsNodes().isNotEmpty())
            find("Temperature shown")
            for (digit in "89") find(digit.toString())
            assertTrue(onAllNodes(hasText("89 \u00B0C")).fetchSemanticsNodes().isNotEmpty())
            press("Keep the figures")
            assertEquals(listOf("running-numbers"), kinds())
        }
    }
}
