package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performTextInput
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.LockState
import app.sumpbook.core.Signed
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs

/** What was used although it is locked is told as it was, with its reason; nothing is refused, and no lock ends by it. */
@OptIn(ExperimentalTestApi::class)
class UsedTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    private fun lampOut() = with(cab) {
        val draft = walk("TH-02")
        phone.answerLine(draft, Answer(item = "lamps-stop", place = "rear", answer = AnswerKind.DEFECT, word = "out"))
        phone.signPreTrip(draft, Signed(pinGiven = false), true, null)
    }

    @Test
    fun `a locked road that was driven is recorded with why`() = with(cab) {
        lampOut()
        at(Place.Unit(unit("TH-02"))) {
            picture("unit-locked-acts")
            find("I used it all the same")
            onNodeWithText("Keep that it was used").assertIsNotEnabled()
            onNodeWithText("Say what was used.").assertExists()
            press("The truck was driven (ROAD)")
            onNodeWithText("Keep that it was used").assertIsNotEnabled()
            onNodeWithContentDescription("Why was it used although it is locked?").performTextInput("to the lamp shop, hazard lights on")
            settled()
            picture("used-all-the-same")
            press("Keep that it was used")
            assertEquals(listOf("drive", "pre-trip-section"), kinds().sorted())
            assertIs<Place.Unit>(back.top)
            assertEquals(LockState.LOCKED, phone.unit(unit("TH-02"), person()).roadAir.road.state)
            onNodeWithText("Kept. The shop sees it with the reason.", substring = true).assertExists()
        }
    }

    @Test
    fun `a unit without a lock offers none of it`() = with(cab) {
        at(Place.Unit(unit("TH-01"))) { onNodeWithText("I used it all the same").assertDoesNotExist() }
    }
}
