package app.sumpbook.hand

import android.Manifest
import android.content.ActivityNotFoundException
import android.content.pm.PackageManager
import android.media.MediaDataSource
import android.media.MediaPlayer
import android.media.MediaRecorder
import android.net.Uri
import android.os.Build
import androidx.activity.ComponentActivity
import androidx.activity.result.contract.ActivityResultContracts
import androidx.core.content.ContextCompat
import app.sumpbook.ui.desk.Recorded
import app.sumpbook.ui.desk.Sounds
import java.io.File
import java.io.IOException
import kotlinx.coroutines.CancellationException
import kotlinx.coroutines.CompletableDeferred
import kotlinx.coroutines.Deferred
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.NonCancellable
import kotlinx.coroutines.selects.select
import kotlinx.coroutines.withContext

/**
 * The telephone's microphone. Its right is asked for when a person first presses for a sound, and at no other time; a
 * file can be chosen without it.
 */
class Microphone(private val activity: ComponentActivity) : Sounds {
    private val recorded = File(activity.cacheDir, "sound/recorded.m4a")
    private var asking: CompletableDeferred<Boolean>? = null
    private var choosing: CompletableDeferred<Uri?>? = null

    // Registered in the same order every time, so that an answer finds its way to a window made anew.
    private val mayListen = activity.registerForActivityResult(ActivityResultContracts.RequestPermission()) { yes ->
        asking?.complete(yes)
        asking = null
    }
    private val picker = activity.registerForActivityResult(ActivityResultContracts.GetContent()) { uri ->
        choosing?.complete(uri)
        choosing = null
    }

    override val microphone: Boolean get() = activity.packageManager.hasSystemFeature(PackageManager.FEATURE_MICROPHONE)
    override val files = true

    override suspend fun record(mostMs: Int, begun: () -> Unit, stop: Deferred<Unit>): Recorded {
        if (!allowed()) return Recorded.NotAllowed
        withContext(Dispatchers.IO) {
            recorded.parentFile?.mkdirs()
            recorded.delete()
        }
        val over = CompletableDeferred<Unit>()
        val recorder = recorder()
        try {
            recorder.listens(mostMs, over)
            begun()
            select {
                over.onAwait { }
                stop.onAwait { }
            }
            try {
                recorder.stop()
            } catch (why: IllegalStateException) {
                // It stopped by itself: the file is whole.
                if (!over.isCompleted) throw why
            }
            val bytes = withContext(Dispatchers.IO) { recorded.readBytes() }
            return if (bytes.isEmpty()) Recorded.NoMicrophone else Recorded.Sound(bytes)
        } catch (left: CancellationException) {
            throw left
        } catch (_: IOException) {
            return Recorded.NoMicrophone
        } catch (_: RuntimeException) {
            // Another app has it, a call came, or it was stopped before the first sample: the system says no more.
            return Recorded.NoMicrophone
        } finally {
            recorder.release()
            withContext(NonCancellable + Dispatchers.IO) { recorded.delete() }
        }
    }

    /** One channel of AAC, small enough for the worst way to the shop. It stops by itself. */
    private fun MediaRecorder.listens(mostMs: Int, over: CompletableDeferred<Unit>) {
        setAudioSource(MediaRecorder.AudioSource.MIC)
        setOutputFormat(MediaRecorder.OutputFormat.MPEG_4)
        setAudioEncoder(MediaRecorder.AudioEncoder.AAC)
        setAudioChannels(1)
        setAudioSamplingRate(16_000)
        setAudioEncodingBitRate(32_000)
        setMaxDuration(mostMs)
        setOutputFile(recorded.path)
        setOnInfoListener { _, what, _ -> if (what == MediaRecorder.MEDIA_RECORDER_INFO_MAX_DURATION_REACHED) over.complete(Unit) }
        setOnErrorListener { _, what, _ -> over.completeExceptionally(IOException("the recorder says $what")) }
        prepare()
        start()
    }

    @Suppress("DEPRECATION")
    private fun recorder() = if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.S) MediaRecorder(activity) else MediaRecorder()

    private suspend fun allowed(): Boolean {
        if (ContextCompat.checkSelfPermission(activity, Manifest.permission.RECORD_AUDIO) == PackageManager.PERMISSION_GRANTED) return true
        val answer = CompletableDeferred<Boolean>().also { asking = it }
        mayListen.launch(Manifest.permission.RECORD_AUDIO)
        return answer.await()
    }

    override suspend fun pick(): ByteArray? {
        val answer = CompletableDeferred<Uri?>().also { choosing = it }
        try {
            picker.launch("audio/*")
        } catch (_: ActivityNotFoundException) {
            choosing = null
            return null
        }
        val uri = answer.await() ?: return null
        return withContext(Dispatchers.IO) { readWhole(activity.contentResolver, uri) }
    }

    override suspend fun play(sound: ByteArray): Boolean {
        val over = CompletableDeferred<Boolean>()
        val player = MediaPlayer()
        try {
            player.setDataSource(Held(sound))
            player.setOnCompletionListener { over.complete(true) }
            player.setOnErrorListener { _, _, _ -> over.complete(false) }
            withContext(Dispatchers.IO) { player.prepare() }
            player.start()
            return over.await()
        } catch (left: CancellationException) {
            throw left
        } catch (_: IOException) {
            return false
        } catch (_: IllegalStateException) {
            return false
        } finally {
            player.release()
        }
    }

    /** Bytes that are played from memory: they never lie in a file that another app could read. */
    private class Held(private val bytes: ByteArray) : MediaDataSource() {
        override fun readAt(position: Long, buffer: ByteArray, offset: Int, size: Int): Int {
            if (position >= bytes.size) return -1
            val much = minOf(size.toLong(), bytes.size - position).toInt()
            bytes.copyInto(buffer, offset, position.toInt(), position.toInt() + much)
            return much
        }

        override fun getSize(): Long = bytes.size.toLong()

        override fun close() = Unit
    }
}
