package app.sumpbook.ui.screen

import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performSemanticsAction
import androidx.compose.ui.test.performTextInput
import app.sumpbook.ui.desk.Pictures
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import java.awt.image.BufferedImage
import java.io.ByteArrayOutputStream
import javax.imageio.ImageIO
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals

/** Photos of the glass and of the display go with what was told. */
@OptIn(ExperimentalTestApi::class)
class PhotosTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    /** A camera that takes a picture of so many lines. */
    private class Camera(private val high: Int) : Pictures {
        override suspend fun take() = ByteArrayOutputStream().also { ImageIO.write(BufferedImage(32, high, BufferedImage.TYPE_INT_RGB), "jpeg", it) }.toByteArray()
        override suspend fun pick() = take()
        override suspend fun late(): ByteArray? = null
    }

    /** How many photos each kept entry names, as the phone lists them. */
    private fun photos(kind: String) = cab.phone.whereItIs(1u).days.flatMap { it.rows }.filter { it.kind == kind }.map { it.photos.size }

    @Test
    fun `a level takes its photo along`() = with(cab) {
        at(Place.Glass(unit("TH-02")), pictures = Camera(24)) {
            onNodeWithContentDescription("Sight glass").performScrollTo().performSemanticsAction(SemanticsActions.SetProgress) { it(50f) }
            settled()
            find("Yes, at least 5 minutes")
            find("Take a photo")
            onNodeWithText("1 photo goes with it").assertExists()
            picture("glass-photo")
            press("Keep 50 %")
            assertEquals(listOf(1), photos("level-check"))
        }
    }

    @Test
    fun `a display note takes its photo along`() = with(cab) {
        at(Place.Display(unit("TH-05"), ""), pictures = Camera(25)) {
            press("fault")
            onNodeWithContentDescription("As it stands there").performTextInput("HIGH TEMP")
            settled()
            find("Take a photo")
            onNodeWithText("1 photo goes with it").assertExists()
            picture("display-photo")
            press("Keep what it shows")
            assertEquals(listOf(1), photos("display-note"))
        }
    }
}
