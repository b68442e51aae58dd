package app.sumpbook.ui.screen

import androidx.compose.foundation.Image
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.graphics.Canvas
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.ImageBitmap
import androidx.compose.ui.graphics.Paint
import androidx.compose.ui.layout.ContentScale
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.ui.desk.LocalPictures
import app.sumpbook.ui.desk.Pixels
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.theme.LocalType

/** A photo this phone holds, small; that it is at the shop or on another phone where it does not. */
@Composable
fun PhotoShown(photo: String) {
    val pictures = LocalPictures.current
    val shown by seen(photo) { phone.photo(photo)?.let { pictures?.pixels(it) }?.let(::drawn) }
    val told = shown ?: return
    val picture = (told as? Told.Got)?.it
    if (picture == null) Text(stringResource(R.string.photo_not_here), style = LocalType.current.help)
    else Image(picture, stringResource(R.string.photo_of_defect), Modifier.fillMaxWidth().heightIn(max = 240.dp), contentScale = ContentScale.Fit)
}

/** A picture drawn small: every so many pixels one. */
private fun drawn(pixels: Pixels): ImageBitmap {
    val step = (maxOf(pixels.wide, pixels.high) + MOST_SIDE - 1) / MOST_SIDE
    val (wide, high) = maxOf(pixels.wide / step, 1) to maxOf(pixels.high / step, 1)
    val bitmap = ImageBitmap(wide, high)
    val canvas = Canvas(bitmap)
    val paint = Paint()
    for (y in 0 until high) {
        for (x in 0 until wide) {
            paint.color = Color(pixels.argb[y * step * pixels.wide + x * step])
            canvas.drawRect(Rect(x.toFloat(), y.toFloat(), x + 1f, y + 1f), paint)
        }
    }
    return bitmap
}

/** Enough to know a cracked mirror again. */
private const val MOST_SIDE = 320
