package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.res.pluralStringResource
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.SecondaryRow
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.PictureTaker
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.rememberPictureTaker
import app.sumpbook.ui.theme.LocalType

/**
 * Photos of what is being told. Each is kept on this phone before it is named; one that is not kept never holds up what
 * it belongs to. Nothing where there is neither camera nor pictures.
 */
@Composable
fun PhotoPart(photos: List<String>, change: (List<String>) -> Unit) {
    val act = rememberAct()
    val taker = rememberPictureTaker { bytes -> act.now({ phone.keepPhoto(bytes) }) { change((photos + it).distinct()) } } ?: return
    SecondaryRow { PhotoButtons(taker) }
    PhotosWithIt(photos.size)
    act.refused?.let { Strip(sentence(it)) }
}

/** The ways to a photo, beside other buttons. */
@Composable
fun PhotoButtons(taker: PictureTaker) {
    if (taker.camera) SecondaryButton(stringResource(R.string.photo_take)) { taker.take() }
    SecondaryButton(stringResource(R.string.photo_choose)) { taker.pick() }
}

/** How many were taken; nothing for none. */
@Composable
fun PhotosWithIt(count: Int) {
    if (count > 0) Text(pluralStringResource(R.plurals.photos_with_it, count, count), style = LocalType.current.text)
}

/** One photo of what is being told: another one taken stands for it. */
@Composable
fun OnePhoto(photo: String?, change: (String?) -> Unit) = PhotoPart(listOfNotNull(photo)) { change(it.lastOrNull()) }
