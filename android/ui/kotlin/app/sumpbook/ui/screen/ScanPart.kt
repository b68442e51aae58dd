package app.sumpbook.ui.screen

import androidx.compose.runtime.Composable
import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.LocalPictures
import app.sumpbook.ui.desk.PictureTaker
import app.sumpbook.ui.desk.codeIn
import app.sumpbook.ui.desk.rememberPictureTaker
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext

/** Reads QR codes for one screen: from the telephone's camera, or from a picture that is there already. */
@Stable
class Scan internal constructor(private val taker: PictureTaker) {
    /** There is a camera; else a picture is chosen. */
    val camera: Boolean get() = taker.camera

    /** A picture was taken and no code could be read in it. */
    var nothing by mutableStateOf(false)
        internal set

    /** A picture is being looked at. */
    var looking by mutableStateOf(false)
        internal set

    /** Reads one: with the camera where there is one. */
    fun now() = if (camera) taker.take() else taker.pick()

    /** Reads one from a picture. */
    fun fromPicture() = taker.pick()
}

/**
 * The way to codes for this screen; none where there are no pictures.
 *
 * @param came the text that was read
 */
@Composable
fun rememberScan(came: (String) -> Unit): Scan? {
    val pictures = LocalPictures.current ?: return null
    val scope = rememberCoroutineScope()
    val holder = remember(pictures) { arrayOfNulls<Scan>(1) }
    val taker = rememberPictureTaker { bytes ->
        val scan = holder[0] ?: return@rememberPictureTaker
        scope.launch {
            scan.looking = true
            val text = withContext(Dispatchers.Default) { pictures.pixels(bytes)?.let(::codeIn) }
            scan.looking = false
            scan.nothing = text == null
            text?.let(came)
        }
    } ?: return null
    return remember(taker) { Scan(taker).also { holder[0] = it } }
}

/** What became of the last picture. */
@Composable
fun ScanStrip(scan: Scan?) {
    if (scan?.looking == true) Strip(stringResource(R.string.scan_looking))
    if (scan?.nothing == true) Strip(stringResource(R.string.scan_nothing), heavy = true)
}

/** A picture that is there already: for whoever got the code on another way. */
@Composable
fun ScanPictureButton(scan: Scan) = SecondaryButton(stringResource(R.string.scan_picture)) { scan.fromPicture() }
