package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.onNodeWithText
import app.sumpbook.core.StopNow
import app.sumpbook.ui.control.assertTargets
import app.sumpbook.ui.control.assertText
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.Moments
import app.sumpbook.ui.words.OwnWay
import java.time.Instant
import java.time.ZoneId
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs

/** What is done with a unit most stands on its screen: oil, air, display. */
@OptIn(ExperimentalTestApi::class)
class OneUnitTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    @Test
    fun `air is started from the unit's screen, and stopped there once it runs`() = with(cab) {
        at(Place.Unit(unit("TH-02"))) {
            picture("unit-air")
            for (act in listOf("Oil", "Start air", "Display", "More")) onNode(hasText(act) and hasClickAction()).assertIsDisplayed()
            onNodeWithText("Stop air").assertDoesNotExist()
            press("Start air")
            assertEquals(Place.Steps(unit("TH-02"), "start"), back.top)
            repeat(6) { press("Done, next") }
            press("Done")
            assertIs<StopNow.Running>(phone.glass(unit("TH-02"), null, null).stop)
        }
        at(Place.Unit(unit("TH-02"))) {
            onNodeWithText("Start air").assertDoesNotExist()
            press("Stop air")
            assertEquals(Place.Steps(unit("TH-02"), "shut-down"), back.top)
        }
    }

    @Test
    fun `the header tells the number and the yard's day, the glass is one tap further`() = with(cab) {
        at(Place.Unit(unit("TH-02"))) {
            val day = Moments(ZoneId.of(phone.fleet().zone), Instant.now(), "en").dayNow()
            onNodeWithText("TH-02").assertIsDisplayed()
            onNodeWithText(day).assertIsDisplayed()
            press("More")
            find("Glass")
            assertEquals(Place.Glass(unit("TH-02")), back.top)
        }
    }

    @Test
    fun `nothing is cut or too small, narrow and large, in Spanish`() = with(cab) {
        at(Place.Unit(unit("TH-02")), OwnWay("es"), wide = 320, high = 616, text = 2f) {
            picture("unit-air-es-320")
            assertTargets("320")
            assertText("320")
        }
    }
}
