package app.sumpbook

import android.content.Intent
import android.net.Uri
import androidx.test.core.app.ActivityScenario
import androidx.core.content.FileProvider
import app.sumpbook.hand.SharedFiles
import kotlinx.coroutines.runBlocking
import org.junit.Assert.assertArrayEquals
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import java.io.ByteArrayInputStream
import java.io.File

@RunWith(RobolectricTestRunner::class)
class FilesTest {
    private val app = RuntimeEnvironment.getApplication() as YardApp
    private val file = byteArrayOf(1, 2, 3, 4)

    private fun lent(uri: String, bytes: ByteArray = file) = Uri.parse(uri).also {
        shadowOf(app.contentResolver).registerInputStreamSupplier(it) { ByteArrayInputStream(bytes) }
    }

    private fun files() = SharedFiles(Robolectric.buildActivity(androidx.activity.ComponentActivity::class.java).get())

    @Before
    fun lendsAnew() = lendFrom()

    @Test
    fun aFileIsLentToWhoeverThePersonChooses() {
        val activity = Robolectric.buildActivity(MainActivity::class.java).create().get()
        val shared = SharedFiles(Robolectric.buildActivity(androidx.activity.ComponentActivity::class.java).get())
        assertTrue(runBlocking { shared.give("handed.sumpbook", file) })
        val chooser = shadowOf(app).nextStartedActivity ?: shadowOf(activity).nextStartedActivity
        assertEquals(Intent.ACTION_CHOOSER, chooser.action)
        val send = chooser.getParcelableExtra(Intent.EXTRA_INTENT, Intent::class.java)!!
        val uri = send.getParcelableExtra(Intent.EXTRA_STREAM, Uri::class.java)!!
        assertEquals("content", uri.scheme)
        assertArrayEquals(file, app.contentResolver.openInputStream(uri)!!.readBytes())
        assertTrue(send.flags and Intent.FLAG_GRANT_READ_URI_PERMISSION != 0)
    }

    @Test
    fun aFileOpenedOrSharedFromAnotherAppComesIn() {
        val shared = files()
        shared.receive(Intent(Intent.ACTION_VIEW, lent("content://mail/1")))
        assertArrayEquals(file, shared.given.value)
        shared.taken()
        assertNull(shared.given.value)
        shared.receive(Intent(Intent.ACTION_SEND).putExtra(Intent.EXTRA_STREAM, lent("content://mail/2")))
        assertArrayEquals(file, shared.given.value)
    }

    @Test
    fun noOtherAppPointsItAtItsOwnFiles() {
        val shared = files()
        shared.receive(Intent(Intent.ACTION_VIEW, Uri.fromFile(File(app.noBackupFilesDir, "device.key"))))
        assertNull(shared.given.value)
        shared.receive(Intent(Intent.ACTION_VIEW, lent("content://${app.packageName}.files/handed/x")))
        assertNull(shared.given.value)
        shared.receive(Intent(Intent.ACTION_MAIN))
        assertNull(shared.given.value)
    }

    @Test
    fun theBookIsNeverLent() {
        val book = File(app.noBackupFilesDir, "book/book.sqlite").apply { parentFile!!.mkdirs(); writeText("x") }
        val refused = runCatching { FileProvider.getUriForFile(app, "${app.packageName}.files", book) }
        assertTrue("$refused", refused.exceptionOrNull() is IllegalArgumentException)
    }

    @Test
    fun aFileThatIsTooLongIsNotReadWhole() {
        val endless = object : java.io.InputStream() {
            override fun read() = 7
            override fun read(into: ByteArray, at: Int, most: Int) = most.also { into.fill(7, at, at + most) }
        }
        val uri = Uri.parse("content://mail/endless")
        shadowOf(app.contentResolver).registerInputStreamSupplier(uri) { endless }
        val shared = files()
        shared.receive(Intent(Intent.ACTION_VIEW, uri))
        assertEquals(0, shared.given.value!!.size)
    }
}
