package app.sumpbook.ui.desk

import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.runtime.rememberUpdatedState
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.runtime.staticCompositionLocalOf
import androidx.compose.ui.graphics.ImageBitmap
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.launch

/** Where pictures come from. Each platform has its own. */
interface Pictures {
    /** There is a camera. */
    val camera: Boolean get() = true

    /** Takes one with the camera: its bytes, JPEG, at most 4 MiB; none when the person changed his mind. */
    suspend fun take(): ByteArray?

    /** Lets the person choose one that is on the phone already. */
    suspend fun pick(): ByteArray?

    /** One that was taken while the system had ended the window that asked for it; given once. */
    suspend fun late(): ByteArray?

    /** A picture's pixels, at most a few million; none when it is no picture. Blocks. */
    fun pixels(picture: ByteArray): Pixels?

    /** A picture to be shown: upright, no side longer than [longest] pixels; none when it is no picture. Blocks. */
    fun toShow(picture: ByteArray, longest: Int): ImageBitmap?
}

/** The way to pictures in use; none where there is no camera and nothing to choose from. */
val LocalPictures = staticCompositionLocalOf<Pictures?> { null }

/** Asks for pictures for one screen. */
@Stable
class PictureTaker internal constructor(
    private val pictures: Pictures,
    private val scope: CoroutineScope,
    private val asked: (Boolean) -> Unit,
    private val came: (ByteArray) -> Unit,
) {
    /** There is a camera. */
    val camera: Boolean get() = pictures.camera

    /** Takes one with the camera. */
    fun take() = ask { pictures.take() }

    /** Chooses one. */
    fun pick() = ask { pictures.pick() }

    private fun ask(get: suspend () -> ByteArray?) {
        asked(true)
        scope.launch {
            get()?.let(came)
            asked(false)
        }
    }
}

/**
 * Asks for pictures for this screen. A telephone short of memory may end the app while its camera is open: the screen
 * that asked is made anew, and gets the picture then.
 */
@Composable
fun rememberPictureTaker(came: (ByteArray) -> Unit): PictureTaker? {
    val pictures = LocalPictures.current ?: return null
    val scope = rememberCoroutineScope()
    val latest by rememberUpdatedState(came)
    var asked by rememberSaveable { mutableStateOf(false) }
    LaunchedEffect(pictures) {
        if (asked) {
            pictures.late()?.let { latest(it) }
            asked = false
        }
    }
    return remember(pictures) { PictureTaker(pictures, scope, { asked = it }, { latest(it) }) }
}
