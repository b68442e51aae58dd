package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertTextContains
import androidx.compose.ui.test.onNodeWithText
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.MainAct
import app.sumpbook.core.Signed
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertIs

/**
 * A locked unit says what, since when and why wherever one stands with it, and whom to call; what the shop does not know of
 * yet says that too.
 */
@OptIn(ExperimentalTestApi::class)
class LockedTest {
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
    fun `a stop of its walk says why, and the walk goes on`() = with(cab) {
        lampOut()
        val draft = walk("TH-02")
        val stop = stop(draft, "cab-off")
        val main = phone.stop(draft, stop, emptyList(), 1_000u)?.main?.act
        assertIs<MainAct.AllOk>(main, "looking is allowed")
        at(Place.Stop(unit("TH-02"), draft, stop)) {
            onNodeWithText("ROAD: LOCKED ", substring = true).assertTextContains("Stop lamps, rear: out, Amos Tillery", substring = true)
            onNodeWithText("AIR:", substring = true).assertDoesNotExist()
            picture("stop-locked")
        }
        at(Place.Stop(unit("TH-02"), draft, stop), OwnWay("es")) { onNodeWithText("MANEJO: BLOQUEADO ", substring = true).assertExists() }
        val free = walk("TH-03")
        at(Place.Stop(unit("TH-03"), free, stop(free, "cab-off"))) { onNodeWithText("LOCKED", substring = true).assertDoesNotExist() }
    }

    @Test
    fun `signed with a lock, it says that the shop does not know yet`() = with(cab) {
        val draft = answeredWalk("TH-03")
        phone.answerLine(draft, Answer("mirrors", null, AnswerKind.DEFECT, word = "no-view"))
        at(Place.Sign(unit("TH-03"), draft)) {
            press("Sign without PIN")
            onNodeWithText("Signed. ROAD locked: not to be used until certified and reviewed.").assertExists()
            onNodeWithText("ROAD locked on this phone; the shop does not know yet. Call.").assertExists()
            picture("signed-locked-here")
        }
        at(Place.Unit(unit("TH-03")), OwnWay("es")) { onNodeWithText("MANEJO con bloqueo en este teléfono; el taller todavía no lo sabe. Llama.").assertExists() }
    }

    @Test
    fun `a unit without a lock names nobody`() = with(cab) {
        at(Place.Today()) {
            onNodeWithText("On call", substring = true).assertDoesNotExist()
            onNodeWithText("Call Night desk").assertDoesNotExist()
        }
    }
}
