package app.sumpbook.hand

import android.net.Uri
import androidx.activity.ComponentActivity
import androidx.activity.result.PickVisualMediaRequest
import androidx.activity.result.contract.ActivityResultContracts
import androidx.compose.ui.graphics.ImageBitmap
import androidx.core.content.FileProvider
import app.sumpbook.ui.desk.Pictures
import app.sumpbook.ui.desk.Pixels
import java.io.File
import kotlinx.coroutines.CompletableDeferred
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.withContext

/** The telephone's own camera app, and its own chooser of pictures: this app needs no right to either. */
class CameraAndPicker(private val activity: ComponentActivity) : Pictures {
    private val taken = File(activity.filesDir, "camera/taken.jpg")
    private var waiting: CompletableDeferred<Boolean>? = null
    private var choosing: CompletableDeferred<Uri?>? = null

    // Registered in the same order every time, so that an answer finds its way to a window made anew.
    private val byCamera = activity.registerForActivityResult(ActivityResultContracts.TakePicture()) { done ->
        if (!done) taken.delete()
        waiting?.complete(done)
        waiting = null
    }
    private val picker = activity.registerForActivityResult(ActivityResultContracts.PickVisualMedia()) { uri ->
        choosing?.complete(uri)
        choosing = null
    }

    override suspend fun take(): ByteArray? {
        withContext(Dispatchers.IO) {
            taken.parentFile?.mkdirs()
            taken.delete()
        }
        val answer = CompletableDeferred<Boolean>().also { waiting = it }
        byCamera.launch(FileProvider.getUriForFile(activity, provider(activity), taken))
        return if (answer.await()) late() else null
    }

    override suspend fun pick(): ByteArray? {
        val answer = CompletableDeferred<Uri?>().also { choosing = it }
        picker.launch(PickVisualMediaRequest(ActivityResultContracts.PickVisualMedia.ImageOnly))
        val uri = answer.await() ?: return null
        return withContext(Dispatchers.IO) { smallEnough(readWhole(activity.contentResolver, uri)) }
    }

    override suspend fun late(): ByteArray? = withContext(Dispatchers.IO) {
        if (taken.length() == 0L) return@withContext null
        smallEnough(taken.readBytes()).also { taken.delete() }
    }

    override fun pixels(picture: ByteArray): Pixels? = pixelsOf(picture)

    override fun toShow(picture: ByteArray, longest: Int): ImageBitmap? = shownAs(picture, longest)
}

/** The authority under which this app lends its files. */
internal fun provider(activity: ComponentActivity) = "${activity.packageName}.files"
