package app.sumpbook

import android.app.Activity
import android.content.Intent
import android.graphics.Bitmap
import android.net.Uri
import android.provider.MediaStore
import androidx.activity.ComponentActivity
import app.sumpbook.core.Phone
import app.sumpbook.core.PhoneException
import app.sumpbook.core.PhotoKind
import app.sumpbook.hand.CameraAndPicker
import app.sumpbook.hand.MOST_PHOTO_BYTES
import app.sumpbook.hand.shownAs
import app.sumpbook.hand.smallEnough
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.async
import app.sumpbook.ui.HubYard
import app.sumpbook.ui.turnedToTheRight
import app.sumpbook.ui.until
import org.junit.Assert.assertArrayEquals
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import java.io.ByteArrayOutputStream
import java.util.Random

@OptIn(kotlinx.coroutines.ExperimentalCoroutinesApi::class)
@RunWith(RobolectricTestRunner::class)
class PicturesTest {
    private val app = RuntimeEnvironment.getApplication() as YardApp

    class Asks : ComponentActivity() {
        lateinit var pictures: CameraAndPicker

        override fun onCreate(savedInstanceState: android.os.Bundle?) {
            super.onCreate(savedInstanceState)
            pictures = CameraAndPicker(this)
        }
    }

    private fun jpeg(wide: Int, high: Int, quality: Int = 90, noise: Boolean = false): ByteArray {
        val drawn = Bitmap.createBitmap(wide, high, Bitmap.Config.ARGB_8888)
        if (noise) {
            val random = Random(1)
            drawn.setPixels(IntArray(wide * high) { random.nextInt() or (0xFF shl 24) }, 0, wide, 0, 0, wide, high)
        }
        return ByteArrayOutputStream().also { drawn.compress(Bitmap.CompressFormat.JPEG, quality, it) }.toByteArray()
    }

    private fun asks(): Asks {
        shadowOf(app.packageManager).addActivityIfNotPresent(android.content.ComponentName(app, Asks::class.java))
        return Robolectric.buildActivity(Asks::class.java).setup().get()
    }

    /** The telephone's camera app writes to where it was told and comes back. */
    private fun cameraTakes(activity: Asks, picture: ByteArray?) {
        shadowOf(android.os.Looper.getMainLooper()).idle()
        until("the camera is asked") { shadowOf(android.os.Looper.getMainLooper()).idle(); shadowOf(activity).peekNextStartedActivityForResult() != null }
        val asked = shadowOf(activity).nextStartedActivityForResult
        assertEquals(MediaStore.ACTION_IMAGE_CAPTURE, asked.intent.action)
        val to = asked.intent.getParcelableExtra(MediaStore.EXTRA_OUTPUT, Uri::class.java)!!
        if (picture != null) app.contentResolver.openOutputStream(to)!!.use { it.write(picture) }
        shadowOf(activity).receiveResult(asked.intent, if (picture == null) Activity.RESULT_CANCELED else Activity.RESULT_OK, Intent())
        shadowOf(android.os.Looper.getMainLooper()).idle()
    }

    @Before
    fun lendsAnew() = lendFrom()

    @Test
    fun thePictureOfTheCameraComesBackAndTheCoreKeepsIt() {
        val activity = asks()
        val picture = jpeg(640, 480)
        val came = CoroutineScope(Dispatchers.Main).async { activity.pictures.take() }
        cameraTakes(activity, picture)
        until("the picture came") { shadowOf(android.os.Looper.getMainLooper()).idle(); came.isCompleted }
        assertArrayEquals(picture, came.getCompleted())
        HubYard().use { yard ->
            val phone = app.book.enrol { folder, keeper -> Phone.enrolByFile(folder, yard.invitation(), "yard phone 3", keeper, null) }
            assertEquals(64, phone.keepPhoto(picture).length)
            app.book.close()
        }
    }

    @Test
    fun whoComesBackWithoutAPictureHasNone() {
        val activity = asks()
        val came = CoroutineScope(Dispatchers.Main).async { activity.pictures.take() }
        cameraTakes(activity, null)
        until("it came back") { shadowOf(android.os.Looper.getMainLooper()).idle(); came.isCompleted }
        assertNull(came.getCompleted())
    }

    @Test
    fun aPictureTakenWhileTheWindowWasEndedIsGivenOnce() {
        val first = asks()
        CoroutineScope(Dispatchers.Main).async { first.pictures.take() }
        val picture = jpeg(320, 240)
        cameraTakes(first, picture)
        val second = asks()
        fun late(): ByteArray? {
            val came = CoroutineScope(Dispatchers.Main).async { second.pictures.late() }
            until("it was looked for") { shadowOf(android.os.Looper.getMainLooper()).idle(); came.isCompleted }
            return came.getCompleted()
        }
        // The first window's own coroutine may have had it: then nothing is left, and nothing is doubled.
        val once = late()
        if (once != null) assertArrayEquals(picture, once)
        assertNull(late())
    }

    @Test
    fun aPictureThatIsTooLargeIsDrawnSmaller() {
        val large = jpeg(4000, 3000, quality = 100, noise = true)
        assertTrue("${large.size}", large.size > MOST_PHOTO_BYTES)
        val small = smallEnough(large)
        assertTrue("${small.size}", small.size <= MOST_PHOTO_BYTES)
        HubYard().use { yard ->
            val phone = app.book.enrol { folder, keeper -> Phone.enrolByFile(folder, yard.invitation(), "yard phone 3", keeper, null) }
            assertEquals(PhotoKind.TOO_LARGE, assertThrows(PhoneException.Photo::class.java) { phone.keepPhoto(large) }.kind)
            assertEquals(64, phone.keepPhoto(small).length)
            app.book.close()
        }
    }

    @Test
    fun aPhotoIsShownSmallAndUpright() {
        val shown = shownAs(turnedToTheRight(jpeg(1600, 800)), 720)!!
        assertEquals(200 to 400, shown.width to shown.height)
        assertNull(shownAs(byteArrayOf(1, 2, 3), 720))
    }

    @Test
    fun whatIsNoPictureIsLeftForTheCoreToRefuse() {
        val other = ByteArray(MOST_PHOTO_BYTES + 1) { 7 }
        assertArrayEquals(other, smallEnough(other))
    }
}
