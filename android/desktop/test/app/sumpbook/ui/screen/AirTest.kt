package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performTextInput
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Signed
import app.sumpbook.core.StopNow
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs

@OptIn(ExperimentalTestApi::class)
class AirTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    private fun now(door: String) = cab.phone.glass(cab.unit(door), null, null).stop

    @Test
    fun `one step after the other starts the air, and stops it`() = with(cab) {
        at(Place.Air(unit("TH-02"), start = true)) {
            // TH-02 has one pressure and no temperature shown: seven steps.
            onNodeWithText("Start air 1 / 7").assertExists()
            picture("air-start")
            repeat(6) { press("Done, next") }
            assertEquals(emptyList(), kinds(), "nothing is recorded before the last step")
            press("Done")
            assertIs<StopNow.Running>(now("TH-02"))
        }
        at(Place.Air(unit("TH-02"), start = false)) {
            repeat(4) { press("Done, next") }
            press("Done")
            assertIs<StopNow.Stopped>(now("TH-02"))
        }
    }

    @Test
    fun `the steps are those the unit has, by its own valves`() = with(cab) {
        at(Place.Air(unit("TH-01"), start = true)) {
            onNodeWithText("Start air 1 / 10").assertExists()
            repeat(2) { press("Done, next") }
            onNodeWithText("gauge port").assertExists()
            press("Done, next")
            onNodeWithText("Selector on low").assertExists()
        }
    }

    @Test
    fun `not so before the PTO is in records no start`() = with(cab) {
        at(Place.Air(unit("TH-02"), start = true)) {
            press("Not so: stop here")
            onNodeWithText("Wait until it is out.").assertExists()
            press("I stop here")
            assertEquals(emptyList(), kinds())
            assertEquals(StopNow.Unknown as StopNow, now("TH-02"))
        }
    }

    @Test
    fun `with the air locked it opens at the lock, and asks why`() = with(cab) {
        val draft = walk("TH-02")
        phone.answerLine(draft, Answer(item = "oil-look", answer = AnswerKind.DEFECT, word = "milky"))
        phone.signPreTrip(draft, Signed(pinGiven = false), true, null)
        at(Place.Air(unit("TH-02"), start = true)) {
            picture("air-locked")
            onNodeWithText("I use it all the same").assertIsNotEnabled()
            onNodeWithContentDescription("Why is it used although it is locked?").performTextInput("said \"go\" by the boss")
            settled()
            press("I use it all the same")
            repeat(6) { press("Done, next") }
            press("Done")
            assertIs<StopNow.Running>(now("TH-02"))
        }
    }
}
