package app.sumpbook.ui.screen

import androidx.compose.foundation.Image
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.layout.ContentScale
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.ui.desk.LocalPictures
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.theme.LocalType

/** A photo this phone holds, small; that it is at the shop or on another phone where it does not. */
@Composable
fun PhotoShown(photo: String) {
    val pictures = LocalPictures.current
    val shown by seen(photo) { phone.photo(photo)?.let { pictures?.toShow(it, LONGEST) } }
    val told = shown ?: return
    val picture = (told as? Told.Got)?.it
    if (picture == null) Text(stringResource(R.string.photo_not_here), style = LocalType.current.help)
    else Image(picture, stringResource(R.string.photo_of_defect), Modifier.fillMaxWidth().heightIn(max = 240.dp), contentScale = ContentScale.Fit)
}

/** Pixels: the 240 dp of its frame on a screen of three to a dp. */
private const val LONGEST = 720
