package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.onNodeWithText
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Signed
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test

/** A locked unit says on today's card what, since when, why, and whom to call: nobody opens it to find the number. */
@OptIn(ExperimentalTestApi::class)
class TodayLockedTest {
    private val cab = Cab { register("""{"register":"says","on-call":[{"name":"Night desk","number":"555-0140"}]}""") }

    @AfterTest
    fun clear() = cab.close()

    private fun lampOut() = with(cab) {
        val draft = walk("TH-02")
        phone.answerLine(draft, Answer(item = "lamps-stop", place = "rear", answer = AnswerKind.DEFECT, word = "out"))
        phone.signPreTrip(draft, Signed(pinGiven = false), true, null)
    }

    @Test
    fun `the number of whoever is on call stands on the card, and is one tap away`() = with(cab) {
        lampOut()
        at(Place.Today()) {
            onNodeWithText("ROAD: LOCKED", substring = true).assertExists()
            onNodeWithText("On call: Night desk 555-0140", substring = true).assertExists()
            onNodeWithText("Call Night desk").assertExists()
            picture("today-locked")
        }
        at(Place.Today(), OwnWay("es")) { onNodeWithText("De guardia: Night desk 555-0140", substring = true).assertExists() }
    }

    @Test
    fun `a unit without a lock names nobody`() = with(cab) {
        at(Place.Today()) {
            onNodeWithText("On call", substring = true).assertDoesNotExist()
            onNodeWithText("Call Night desk").assertDoesNotExist()
        }
    }
}
