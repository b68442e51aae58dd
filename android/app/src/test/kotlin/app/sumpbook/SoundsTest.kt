package app.sumpbook

import android.Manifest
import android.content.ComponentName
import android.content.pm.PackageManager
import android.os.Looper
import androidx.activity.ComponentActivity
import app.sumpbook.hand.Microphone
import app.sumpbook.ui.desk.Recorded
import app.sumpbook.ui.until
import java.io.File
import kotlinx.coroutines.CompletableDeferred
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Deferred
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.async
import org.junit.Assert.assertArrayEquals
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf

/** The microphone's right is asked for at the press, and a no is an answer. */
@OptIn(kotlinx.coroutines.ExperimentalCoroutinesApi::class)
@RunWith(RobolectricTestRunner::class)
class SoundsTest {
    private val app = RuntimeEnvironment.getApplication() as YardApp

    class Asks : ComponentActivity() {
        lateinit var sounds: Microphone

        override fun onCreate(savedInstanceState: android.os.Bundle?) {
            super.onCreate(savedInstanceState)
            sounds = Microphone(this)
        }
    }

    private fun asks(): Asks {
        shadowOf(app.packageManager).addActivityIfNotPresent(ComponentName(app, Asks::class.java))
        return Robolectric.buildActivity(Asks::class.java).setup().get()
    }

    private fun idle() = shadowOf(Looper.getMainLooper()).idle()

    private fun <T> came(of: Deferred<T>): T {
        until("it came") { idle(); of.isCompleted }
        return of.getCompleted()
    }

    @Test
    fun whoSaysNoIsTakenAtHisWord() {
        val activity = asks()
        assertEquals("nothing is asked before", null, shadowOf(activity).lastRequestedPermission)
        var begun = false
        val told = CoroutineScope(Dispatchers.Main).async { activity.sounds.record(10_000, { begun = true }, CompletableDeferred()) }
        until("the right is asked for") { idle(); shadowOf(activity).lastRequestedPermission != null }
        val asked = shadowOf(activity).lastRequestedPermission
        assertEquals(listOf(Manifest.permission.RECORD_AUDIO), asked.requestedPermissions.toList())
        activity.onRequestPermissionsResult(asked.requestCode, asked.requestedPermissions, intArrayOf(PackageManager.PERMISSION_DENIED))
        assertEquals(Recorded.NotAllowed, came(told))
        assertFalse("the microphone never listened", begun)
    }

    @Test
    fun whatTheRecorderWroteComesBackAndItsFileIsGone() {
        shadowOf(app).grantPermissions(Manifest.permission.RECORD_AUDIO)
        val activity = asks()
        val file = File(app.cacheDir, "sound/recorded.m4a")
        val stop = CompletableDeferred<Unit>()
        val bytes = byteArrayOf(1, 2, 3, 4)
        val told = CoroutineScope(Dispatchers.Main).async { activity.sounds.record(10_000, { file.writeBytes(bytes) }, stop) }
        until("it listens") { idle(); file.length() > 0 }
        assertFalse(told.isCompleted)
        stop.complete(Unit)
        val recorded = came(told)
        assertTrue("$recorded", recorded is Recorded.Sound)
        assertArrayEquals(bytes, (recorded as Recorded.Sound).bytes)
        assertFalse("it is kept by the core, and nowhere else", file.exists())
    }

    @Test
    fun aRecorderThatGaveNothingIsSaidAndBringsNothingDown() {
        shadowOf(app).grantPermissions(Manifest.permission.RECORD_AUDIO)
        val activity = asks()
        val stop = CompletableDeferred<Unit>().apply { complete(Unit) }
        val told = CoroutineScope(Dispatchers.Main).async { activity.sounds.record(10_000, { }, stop) }
        assertEquals(Recorded.NoMicrophone, came(told))
    }
}
