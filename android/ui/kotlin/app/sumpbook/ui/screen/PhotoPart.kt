package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.res.pluralStringResource
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.SecondaryRow
import app.sumpbook.ui.control.Strip
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
    SecondaryRow {
        if (taker.camera) SecondaryButton(stringResource(R.string.photo_take)) { taker.take() }
        SecondaryButton(stringResource(R.string.photo_choose)) { taker.pick() }
    }
    if (photos.isNotEmpty()) Text(pluralStringResource(R.plurals.photos_with_it, photos.size, photos.size), style = LocalType.current.text)
    act.refused?.let { Strip(sentence(it)) }
}
