package app.sumpbook.ui

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasContentDescription
import androidx.compose.ui.test.hasSetTextAction
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performTextInput
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.LockState
import app.sumpbook.core.PinChosen
import app.sumpbook.core.Signed
import app.sumpbook.ui.place.Place
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertTrue
import org.junit.Test

/** Something happened, and an officer asks: the same on each platform. */
@OptIn(ExperimentalTestApi::class)
abstract class WhenItHappens {
    private val yard = HubYard()

    @After
    fun clear() = yard.close()

    @Test
    fun helpIsOneTapAndWhatHappenedIsKeptAtOnce() = onPhone {
        val held = HeldPhone.invited(yard, "Amos Tillery") { Place.Happened(it.unitAt("TH-01")) }
        held.settled.value = held.settled.value.copy(shopNumber = "555-0140")
        held.show(this)
        shows("TH-01")
        shows("somebody hurt")
        onNodeWithText("Call 911").performClick()
        onNodeWithText("Call the shop").performClick()
        assertEquals(listOf("911", "555-0140"), held.called)
        onNodeWithText("spill").performScrollTo().performClick()
        onNode(hasSetTextAction() and hasContentDescription("Where")).performScrollTo().performTextInput("by the north gate")
        held.picture = aPhoto()
        onNodeWithText("Take a photo").performScrollTo().performClick()
        shows("1 photo goes with it")
        shows("No signal: send someone.")
        onNodeWithText("Keep what happened").performClick()
        shows("The shop hears of it when there is signal")
        fun kept() = held.phone.whereItIs(0u).days.flatMap { it.rows }.filter { it.kind == "happened" }
        assertEquals(listOf(1), kept().map { it.photos.size })
        assertEquals("it locks nothing", LockState.NO_LOCK_ON_RECORD, held.phone.unit(held.phone.unitAt("TH-01"), held.signer.person).roadAir.road.state)

        // Nothing is asked for.
        held.back.go(Place.Happened(held.phone.unitAt("TH-01")))
        shows("somebody hurt")
        onNodeWithText("Keep what happened").performClick()
        shows("The shop hears of it when there is signal")
        assertEquals(2, kept().size)
        held.phone.shutdown()
    }

    @Test
    fun theOfficersPageSaysWhatIsRecordedOfThisUnitAndNoOther() = onPhone {
        val held = HeldPhone.invited(yard, "Amos Tillery") { Place.Roadside(it.unitAt("TH-02")) }
        val phone = held.phone
        val draft = phone.beginPreTrip(phone.unitAt("TH-02"), held.signer.person, null)
        phone.answerLine(draft, Answer(item = "lamps-stop", place = "rear", answer = AnswerKind.DEFECT, word = "out"))
        phone.signPreTrip(draft, Signed(pinGiven = false), true, null)
        held.show(this)
        shows("TH-02")
        shows("Tern Hollow Water")
        shows("As known at")
        shows("ROAD: LOCKED")
        shows("no certificate")
        shows("THW 024")
        shows("THW-C-02")
        shows("THW-A-02")
        for (door in phone.fleet().units.map { it.door }.filter { it != "TH-02" }) {
            assertFalse(door, onAllNodes(hasText(door, substring = true)).fetchSemanticsNodes().isNotEmpty())
        }
        phone.shutdown()
    }

    @Test
    fun theOfficersPageIsLeftWithTheSignersPin() = onPhone {
        val held = HeldPhone.invited(yard, "Amos Tillery") { Place.Today() }
        assertEquals(PinChosen.Kept, held.phone.choosePin(held.signer.person, "274906", null))
        held.back.go(Place.Roadside(held.phone.unitAt("TH-01")))
        held.show(this)
        shows("Leave with PIN")
        onNodeWithText("Leave with PIN").performClick()
        fun type(pin: String) = pin.forEach { onNodeWithText(it.toString()).performScrollTo().performClick() }
        type("274905")
        shows("That PIN is another. The page stays.")
        assertTrue(held.back.top is Place.Roadside)
        type("274906")
        waitUntil("it is left", 20_000) { waitForIdle(); held.back.top is Place.Today }
        held.phone.shutdown()
    }

    @Test
    fun aDefectTakesItsPhotoAlongAndDoesNotWaitForOneThatIsNone() = onPhone {
        val held = HeldPhone.invited(yard, "Amos Tillery") { Place.Today() }
        val phone = held.phone
        val unit = phone.unitAt("TH-02")
        val draft = phone.beginPreTrip(unit, held.signer.person, null)
        fun line(label: String) = phone.stop(draft, label, emptyList(), 0u)?.lines?.firstOrNull { it.item == "lamps-stop" && it.place == "rear" }
        val stop = (1..40).map { "$it" }.first { line(it) != null }
        held.back.go(Place.Defect(unit, draft, stop, line(stop)!!.id))
        held.show(this)
        shows("Take a photo")
        held.picture = byteArrayOf(1, 2, 3)
        onNodeWithText("Take a photo").performScrollTo().performClick()
        shows("This is no photo")
        held.picture = aPhoto()
        onNodeWithText("Take a photo").performScrollTo().performClick()
        shows("1 photo goes with it")
        onNodeWithText("out").performScrollTo().performClick()
        onNodeWithText("Keep defect").performClick()
        waitUntil("the defect is kept", 20_000) { waitForIdle(); line(stop)?.answer?.answer == AnswerKind.DEFECT }
        assertEquals(1u, line(stop)?.answer?.photos)
        phone.shutdown()
    }

}
