package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.hasAnyAncestor
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Signed
import app.sumpbook.ui.desk.Pictures
import app.sumpbook.ui.desktop.DesktopPictures
import app.sumpbook.ui.frame.MAIN
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import java.awt.Color
import java.awt.image.BufferedImage
import java.io.ByteArrayOutputStream
import javax.imageio.ImageIO
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs

/** What the last one left is read without a walk, photo and all; a test that is running goes on when the phone is turned. */
@OptIn(ExperimentalTestApi::class)
class ReadOnlyTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    private fun mirror(): ByteArray {
        val image = BufferedImage(640, 480, BufferedImage.TYPE_INT_RGB)
        image.createGraphics().apply { color = Color.GRAY; fillRect(0, 0, 640, 480); color = Color.WHITE; drawLine(40, 400, 600, 60) }
        return ByteArrayOutputStream().also { ImageIO.write(image, "jpeg", it) }.toByteArray()
    }

    @Test
    fun `what was left is read from the unit, and no walk is begun by it`() = with(cab) {
        val draft = walk("TH-03")
        phone.answerLine(draft, Answer("mirrors", null, AnswerKind.DEFECT, word = "cracked", photos = listOf(phone.keepPhoto(mirror()))))
        phone.answerLine(draft, Answer("labels", null, AnswerKind.DEFECT, word = "missing"))
        phone.signPreTrip(draft, Signed(pinGiven = false), true, null)
        val pictures: Pictures = DesktopPictures { null }
        at(Place.Unit(unit("TH-03")), high = 2_400, pictures = pictures) {
            // What locks nothing has its name there too.
            assertEquals(1, onAllNodes(hasText("Warning plates: missing", substring = true)).fetchSemanticsNodes().size)
            picture("unit-left-by")
            onNode(hasText("Nothing known of TH-03 before", substring = true)).performScrollTo().performClick()
            settled()
            assertIs<Place.LastReport>(back.top)
            onNodeWithText("Not what I see: defect").assertDoesNotExist()
            onNodeWithContentDescription("Photo of the defect").performScrollTo().assertIsDisplayed()
            picture("last-report-photo")
            onNode(hasText("Back") and hasAnyAncestor(hasTestTag(MAIN))).performClick()
            settled()
            assertIs<Place.Unit>(back.top)
            assertEquals(emptyList(), phone.drafts().drafts)
        }
    }

    @Test
    fun `a leak test goes on when the phone is turned`() = with(cab) {
        val draft = walk("TH-03")
        at(Place.Stop(unit("TH-03"), draft, stop(draft, "leak-applied"))) {
            press("Start 60 s")
            onNodeWithText("Start again").assertExists()
            turned()
            onNodeWithText("Start again").assertExists()
            onNodeWithContentDescription("Seconds left of 60").assertExists()
        }
        at(Place.Stop(unit("TH-03"), draft, stop(draft, "warning-build-up")), high = 1_600) {
            press("At 85")
            turned()
            onNodeWithText("At 100").assertExists()
        }
    }
}
