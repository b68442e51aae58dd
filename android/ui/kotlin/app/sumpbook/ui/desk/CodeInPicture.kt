package app.sumpbook.ui.desk

import com.google.zxing.BarcodeFormat
import com.google.zxing.BinaryBitmap
import com.google.zxing.DecodeHintType
import com.google.zxing.RGBLuminanceSource
import com.google.zxing.ReaderException
import com.google.zxing.common.HybridBinarizer
import com.google.zxing.qrcode.QRCodeReader

/** A picture row by row from its upper left, each pixel as 0xAARRGGBB. */
class Pixels(val wide: Int, val high: Int, val argb: IntArray)

/** The text of the QR code in a picture; none when there is none, or it cannot be read. It takes a moment: not on the thread that draws. */
fun codeIn(picture: Pixels): String? {
    var smaller: Pixels? = picture
    // Of a sharp picture of many pixels the grain hides the squares: it is looked at from further and further off.
    while (smaller != null) {
        read(smaller)?.let { return it }
        smaller = halved(smaller)
    }
    return null
}

private fun read(picture: Pixels): String? = try {
    val light = RGBLuminanceSource(picture.wide, picture.high, picture.argb)
    QRCodeReader().decode(BinaryBitmap(HybridBinarizer(light)), HINTS).text
} catch (_: ReaderException) {
    null
}

/** Every four pixels as one; none when the squares of a code would become too small. */
private fun halved(of: Pixels): Pixels? {
    val (wide, high) = of.wide / 2 to of.high / 2
    if (minOf(wide, high) < SMALLEST) return null
    val out = IntArray(wide * high)
    for (y in 0 until high) {
        for (x in 0 until wide) {
            val at = 2 * y * of.wide + 2 * x
            var (red, green, blue) = Triple(0, 0, 0)
            for (from in intArrayOf(at, at + 1, at + of.wide, at + of.wide + 1)) {
                red += of.argb[from] shr 16 and 255
                green += of.argb[from] shr 8 and 255
                blue += of.argb[from] and 255
            }
            out[y * wide + x] = (255 shl 24) or (red / 4 shl 16) or (green / 4 shl 8) or blue / 4
        }
    }
    return Pixels(wide, high, out)
}

private const val SMALLEST = 200

private val HINTS = mapOf(DecodeHintType.TRY_HARDER to true, DecodeHintType.POSSIBLE_FORMATS to listOf(BarcodeFormat.QR_CODE), DecodeHintType.ALSO_INVERTED to true)
