package app.sumpbook.hand

import android.content.ContentResolver
import android.content.Intent
import android.net.Uri
import android.os.Build
import androidx.activity.ComponentActivity
import androidx.activity.result.contract.ActivityResultContracts
import androidx.core.content.FileProvider
import app.sumpbook.ui.desk.Files
import app.sumpbook.ui.desk.MOST_FILE_BYTES
import kotlinx.coroutines.CompletableDeferred
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.flow.MutableStateFlow
import kotlinx.coroutines.flow.StateFlow
import kotlinx.coroutines.withContext
import java.io.File
import java.io.IOException

/** Files by the system's share sheet and its file chooser. */
class SharedFiles(private val activity: ComponentActivity) : Files {
    private val handed = File(activity.cacheDir, "handed")
    private val came = MutableStateFlow<ByteArray?>(null)
    private var choosing: CompletableDeferred<Uri?>? = null
    private val chooser = activity.registerForActivityResult(ActivityResultContracts.OpenDocument()) { uri ->
        choosing?.complete(uri)
        choosing = null
    }

    override val given: StateFlow<ByteArray?> get() = came

    override suspend fun give(name: String, bytes: ByteArray): Boolean {
        val file = withContext(Dispatchers.IO) {
            handed.mkdirs()
            // Only the last one is kept: earlier ones were given away, and their entries are in this one as well.
            handed.listFiles()?.forEach { it.delete() }
            File(handed, name).apply { writeBytes(bytes) }
        }
        val uri = FileProvider.getUriForFile(activity, provider(activity), file)
        val send = Intent(Intent.ACTION_SEND).setType(ANY).putExtra(Intent.EXTRA_STREAM, uri).addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION)
        activity.startActivity(Intent.createChooser(send, null))
        return true
    }

    override suspend fun choose(): ByteArray? {
        val answer = CompletableDeferred<Uri?>().also { choosing = it }
        // A hand-over file has a kind of its own that no other app knows.
        chooser.launch(arrayOf("*/*"))
        val uri = answer.await() ?: return null
        return withContext(Dispatchers.IO) { readWhole(activity.contentResolver, uri) }
    }

    override fun taken() {
        came.value = null
    }

    /** Takes a file out of what another app sent, when there is one in it. Blocks while it reads. */
    fun receive(intent: Intent) {
        val uri = when (intent.action) {
            Intent.ACTION_VIEW -> intent.data
            Intent.ACTION_SEND -> streamOf(intent)
            else -> null
        } ?: return
        // Only what another app lends: a path would let it point at this app's own files.
        if (uri.scheme != ContentResolver.SCHEME_CONTENT || uri.authority == provider(activity)) return
        came.value = readWhole(activity.contentResolver, uri)
    }

    @Suppress("DEPRECATION")
    private fun streamOf(intent: Intent): Uri? = if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU) {
        intent.getParcelableExtra(Intent.EXTRA_STREAM, Uri::class.java)
    } else {
        intent.getParcelableExtra(Intent.EXTRA_STREAM)
    }

    private companion object {
        const val ANY = "application/octet-stream"
    }
}

/**
 * All of a document, up to the most that is taken in. What cannot be read is empty: the core then says that it is no
 * file of its own, and that nothing was taken in.
 */
internal fun readWhole(resolver: ContentResolver, uri: Uri): ByteArray = try {
    resolver.openInputStream(uri)?.use { from ->
        val bytes = from.readNBytesUpTo(MOST_FILE_BYTES + 1)
        if (bytes.size > MOST_FILE_BYTES) ByteArray(0) else bytes
    } ?: ByteArray(0)
} catch (_: IOException) {
    ByteArray(0)
} catch (_: SecurityException) {
    ByteArray(0)
}

private fun java.io.InputStream.readNBytesUpTo(most: Int): ByteArray {
    val out = java.io.ByteArrayOutputStream()
    val piece = ByteArray(64 * 1024)
    while (out.size() < most) {
        val read = read(piece, 0, minOf(piece.size, most - out.size()))
        if (read < 0) break
        out.write(piece, 0, read)
    }
    return out.toByteArray()
}
