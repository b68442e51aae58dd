package app.sumpbook.hand

import android.graphics.Bitmap
import android.graphics.BitmapFactory
import android.graphics.Matrix
import android.media.ExifInterface
import androidx.compose.ui.graphics.ImageBitmap
import androidx.compose.ui.graphics.asImageBitmap
import app.sumpbook.ui.desk.Pixels
import java.io.ByteArrayInputStream
import java.io.ByteArrayOutputStream

/** The most the core keeps of one photo, bytes. */
const val MOST_PHOTO_BYTES = 4 * 1024 * 1024

/**
 * A picture as it is when the core keeps it; else drawn smaller and turned upright, as JPEG. What is no picture is given
 * as it is: the core says so in its own words.
 */
fun smallEnough(picture: ByteArray): ByteArray {
    if (picture.size <= MOST_PHOTO_BYTES) return picture
    val drawn = decoded(picture) ?: return picture
    val upright = turned(drawn, picture)
    for (quality in listOf(85, 70, 55)) {
        val out = ByteArrayOutputStream()
        upright.compress(Bitmap.CompressFormat.JPEG, quality, out)
        if (out.size() <= MOST_PHOTO_BYTES) return out.toByteArray()
    }
    return picture
}

/** A picture's pixels, as small as [LONGEST] asks; none when it is no picture. */
fun pixelsOf(picture: ByteArray): Pixels? {
    val drawn = decoded(picture) ?: return null
    val argb = IntArray(drawn.width * drawn.height)
    drawn.getPixels(argb, 0, drawn.width, 0, 0, drawn.width, drawn.height)
    return Pixels(drawn.width, drawn.height, argb)
}

/** A picture upright, no side longer than [longest]; none when it is no picture. */
fun shownAs(picture: ByteArray, longest: Int): ImageBitmap? = decoded(picture, longest)?.let { turned(it, picture).asImageBitmap() }

/** Decoded to at most [longest] pixels a side, halving: a large one is never whole in memory. */
private fun decoded(picture: ByteArray, longest: Int = LONGEST): Bitmap? {
    val bounds = BitmapFactory.Options().apply { inJustDecodeBounds = true }
    BitmapFactory.decodeByteArray(picture, 0, picture.size, bounds)
    var halved = 1
    while (maxOf(bounds.outWidth, bounds.outHeight) / halved > longest) halved *= 2
    return BitmapFactory.decodeByteArray(picture, 0, picture.size, BitmapFactory.Options().apply { inSampleSize = halved })
}

private fun turned(drawn: Bitmap, picture: ByteArray): Bitmap {
    val said = ExifInterface(ByteArrayInputStream(picture)).getAttributeInt(ExifInterface.TAG_ORIENTATION, ExifInterface.ORIENTATION_NORMAL)
    val degrees = when (said) {
        ExifInterface.ORIENTATION_ROTATE_90 -> 90f
        ExifInterface.ORIENTATION_ROTATE_180 -> 180f
        ExifInterface.ORIENTATION_ROTATE_270 -> 270f
        else -> return drawn
    }
    return Bitmap.createBitmap(drawn, 0, 0, drawn.width, drawn.height, Matrix().apply { postRotate(degrees) }, true)
}

/** Enough to read a serial plate from a step away. */
private const val LONGEST = 2560
