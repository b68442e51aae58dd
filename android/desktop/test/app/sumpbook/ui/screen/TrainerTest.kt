package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithText
import app.sumpbook.core.PinSaid
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs

/** Whoever is learning signs with his own PIN, and his trainer with another. */
@OptIn(ExperimentalTestApi::class)
class TrainerTest {
    private val cab = Cab()
    private val gil = cab.person("Gil Sandoval")
    private val hattie = cab.person("Hattie Brun")

    @AfterTest
    fun clear() = cab.close()

    private fun SkikoComposeUiTest.type(digits: String) = with(cab) { for (digit in digits) find(digit.toString()) }

    /** What the record of the walk says of both PINs. */
    private fun pinsOfTheRecord() = cab.phone.roadside(cab.unit("TH-03")).signed.single().let { listOf(it.pinGiven, it.trainerPinGiven) }

    @Test
    fun `the learner's PIN, then the trainer's, each with tries of its own`() = with(cab) {
        val draft = answeredWalk("TH-03", gil)
        phone.choosePin(gil, "271828", null)
        phone.choosePin(hattie, "161803", null)
        at(Place.Sign(unit("TH-03"), draft), signer = Signer(gil, hattie)) {
            onNodeWithContentDescription("Gil Sandoval: PIN", substring = true).assertExists()
            type("271828")
            picture("sign-learner")
            press("Next: Hattie Brun's PIN")
            onNodeWithContentDescription("Hattie Brun: PIN", substring = true).assertExists()
            assertEquals(emptyList(), kinds(), "one of two PINs signs nothing")
            // The learner's own is not the trainer's: a try of hers, none of his.
            type("271828")
            press("Sign as Gil Sandoval with Hattie Brun")
            onNodeWithText("That PIN is not Hattie Brun's.", substring = true).assertExists()
            picture("sign-trainer-wrong")
            assertEquals(emptyList(), kinds())
            assertEquals(PinSaid.Right as PinSaid, phone.givePin(gil, "271828"))
            type("161803")
            press("Sign as Gil Sandoval with Hattie Brun")
            assertEquals(listOf("pre-trip-section"), kinds())
            assertEquals(listOf(true, true), pinsOfTheRecord(), "the record says that both were given")
            assertIs<Place.Unit>(back.top)
        }
    }

    @Test
    fun `a trainer without a PIN on this phone chooses one there, or the record says there was none`() = with(cab) {
        val draft = answeredWalk("TH-03", gil)
        at(Place.Sign(unit("TH-03"), draft), signer = Signer(gil, hattie)) {
            press("Go on without Gil Sandoval's PIN")
            onNodeWithContentDescription("Hattie Brun: Choose a PIN of 6 digits", substring = true).assertExists()
            repeat(2) {
                type("161803")
                press(if (it == 0) "Go on" else "Sign as Gil Sandoval with Hattie Brun")
            }
            assertEquals(listOf("pre-trip-section"), kinds())
            assertEquals(true to false, phone.pinChosen(hattie) to phone.pinChosen(gil))
            assertEquals(listOf(false, true), pinsOfTheRecord(), "each of the two by itself")
            assertEquals("Hattie Brun", phone.roadside(unit("TH-03")).signed.single().trainer)
        }
    }

    @Test
    fun `a learner whose trainer the phone no longer knows names one before the signature`() = with(cab) {
        val draft = answeredWalk("TH-03", gil)
        at(Place.Sign(unit("TH-03"), draft), signer = Signer(gil)) {
            onNodeWithText("Say first with whom.").assertExists()
            onNodeWithText("Go on").assertIsNotEnabled()
            picture("sign-with-whom")
            find("Hattie Brun")
            assertEquals(Signer(gil, hattie), back.signer)
            press("Go on without Gil Sandoval's PIN")
            press("Sign without Hattie Brun's PIN")
            assertEquals(listOf("pre-trip-section"), kinds())
            assertEquals(listOf(false, false), pinsOfTheRecord())
        }
    }

    @Test
    fun `the end of a day is signed by both`() = with(cab) {
        phone.choosePin(gil, "271828", null)
        phone.choosePin(hattie, "161803", null)
        at(Place.EndOfDay(unit("TH-03"), ""), signer = Signer(gil, hattie)) {
            find("None found")
            type("271828")
            press("Next: Hattie Brun's PIN")
            type("161803")
            press("Sign end of day")
            assertEquals(listOf("end-of-day"), kinds())
        }
    }
}
