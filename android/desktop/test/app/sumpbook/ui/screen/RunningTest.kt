package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.onNodeWithText
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals

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
}
