package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performTextInput
import app.sumpbook.core.Severity
import app.sumpbook.core.SiteDust
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs

@OptIn(ExperimentalTestApi::class)
class EndOfDayTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    @Test
    fun `none found, two figures, words for the next, signed`() = with(cab) {
        signedWalk("TH-01")
        at(Place.EndOfDay(unit("TH-01"), "")) {
            picture("end-of-day-empty")
            onNodeWithText("Say which defects were found, or that none was.").assertExists()
            find("None found")
            find("Hours")
            for (digit in "28625") find(digit.toString())
            find("It reads so")
            find("Odometer")
            for (digit in "84213") find(digit.toString())
            find("It reads so")
            find("Yes")
            onNodeWithContentDescription("To next driver").performScrollTo().performTextInput("left hose drips")
            settled()
            picture("end-of-day")
            press("Sign without PIN")
            assertIs<Place.Unit>(back.top)
            assertEquals(listOf("end-of-day"), kinds().filter { it == "end-of-day" })
            val left = checkNotNull(phone.lastReport(unit("TH-01"), emptyList()).report)
            assertEquals(true to "left hose drips", left.noneFound to left.toNext)
            assertEquals(true, left.tanksDrained)
            assertEquals(28_625L, phone.unit(unit("TH-01"), person()).reading?.figure)
        }
    }

    @Test
    fun `a defect is told by its line, with the same form as in a walk, and no walk is left begun`() = with(cab) {
        at(Place.EndOfDay(unit("TH-03"), "")) {
            onNodeWithText("No pre-trip covers today. Sign all the same.").assertExists()
            find("Defect")
            find("Mirrors")
            find("no view")
            press("Keep defect")
            picture("end-of-day-defect")
            onNodeWithText("Mirrors: no view").assertExists()
            val draft = phone.drafts().drafts.single()
            assertEquals("end-of-day", draft.kind)
            assertEquals(Severity.ROAD, phone.endOfDay(draft.id).found.single().severity)
            find("None found")
            assertEquals(emptyList(), phone.endOfDay(draft.id).found)
        }
    }

    @Test
    fun `a lock told in the evening is read by whoever goes off, as one the shop does not know of`() = with(cab) {
        at(Place.EndOfDay(unit("TH-03"), "")) {
            find("Defect")
            find("Mirrors")
            find("no view")
            press("Keep defect")
            press("Sign without PIN")
            assertEquals("Signed. ROAD locked on this phone; the shop does not know yet. Call.", back.said)
        }
    }

    @Test
    fun `the dust nobody spoke of is asked, and signed with the report`() = with(cab) {
        at(Place.EndOfDay(unit("TH-01"), ""), high = 2_400) {
            find("None found")
            find("very dusty")
            assertEquals(null, phone.procedure(unit("TH-01"), "arrival", person()).site?.said)
            picture("end-of-day-dust")
            press("Sign without PIN")
            assertEquals(SiteDust.VERY_DUSTY, phone.procedure(unit("TH-01"), "arrival", person()).site?.said?.dust)
        }
        at(Place.EndOfDay(unit("TH-01"), ""), high = 2_400) {
            onNodeWithText("How dusty is the site?").assertDoesNotExist()
            onNodeWithText("Site today: very dusty", substring = true).assertExists()
        }
    }

    @Test
    fun `a figure that cannot be is asked about, and stands as a reading of its own`() = with(cab) {
        says(3, "TH-01", "hour-reading", """{"meter":"compressor","figure":"2862.4","how":"asked","kept-when-asked":false}""")
        at(Place.EndOfDay(unit("TH-01"), ""), high = 2_400) {
            find("None found")
            find("Hours")
            for (digit in "82661") find(digit.toString())
            onNodeWithText("The meter can read at most", substring = true).assertExists()
            onNodeWithText("Typed wrong?", substring = true).assertExists()
            onNodeWithText("It would read 2,866.1.", substring = true).assertExists()
            picture("end-of-day-asked")
            onNodeWithText("It reads so").assertDoesNotExist()
            find("Keep 8,266.1 h with a photo")
            assertEquals(null, phone.endOfDay(phone.drafts().drafts.single().id).hours, "the report does not say it as if it fitted")
            assertEquals(1u, phone.unit(unit("TH-01"), person()).openQuestions)
        }
    }

    @Test
    fun `nothing is chosen beforehand, in Spanish`() = with(cab) {
        at(Place.EndOfDay(unit("TH-01"), ""), OwnWay("es")) {
            onNodeWithText("¿Defectos hoy, camión o aire?").assertExists()
            onNodeWithText("Firmar fin de día").assertIsNotEnabled()
            picture("end-of-day-es")
        }
    }
}
