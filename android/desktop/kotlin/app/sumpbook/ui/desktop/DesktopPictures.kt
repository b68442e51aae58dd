package app.sumpbook.ui.desktop

import androidx.compose.ui.graphics.ImageBitmap
import androidx.compose.ui.graphics.toComposeImageBitmap
import app.sumpbook.ui.desk.Pictures
import app.sumpbook.ui.desk.Pixels
import java.awt.EventQueue
import java.awt.FileDialog
import java.awt.Frame
import java.io.ByteArrayInputStream
import java.io.File
import java.io.IOException
import javax.imageio.ImageIO
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.withContext
import org.jetbrains.skia.Image
import org.jetbrains.skia.Rect
import org.jetbrains.skia.SamplingMode
import org.jetbrains.skia.Surface

/**
 * Pictures of a desk computer: it has no camera here, so they are files.
 *
 * @param choose which file; none when the person changed his mind
 */
class DesktopPictures(private val choose: () -> File? = ::fileOfADialog) : Pictures {
    override val camera = false

    override suspend fun take(): ByteArray? = null

    override suspend fun pick(): ByteArray? = withContext(Dispatchers.IO) { choose()?.readBytes() }

    override suspend fun late(): ByteArray? = null

    override fun pixels(picture: ByteArray): Pixels? = try {
        ImageIO.read(ByteArrayInputStream(picture))?.let { Pixels(it.width, it.height, it.getRGB(0, 0, it.width, it.height, null, 0, it.width)) }
    } catch (_: IOException) {
        null
    }

    override fun toShow(picture: ByteArray, longest: Int): ImageBitmap? = try {
        // It is turned as the picture says.
        Image.makeFromEncoded(picture).use { smaller(it, longest) }.toComposeImageBitmap()
    } catch (_: IllegalArgumentException) {
        null
    }
}

private fun smaller(of: Image, longest: Int): Image {
    val by = (longest.toFloat() / maxOf(of.width, of.height)).coerceAtMost(1f)
    val (wide, high) = maxOf((of.width * by).toInt(), 1) to maxOf((of.height * by).toInt(), 1)
    return Surface.makeRasterN32Premul(wide, high).use { surface ->
        val to = Rect.makeWH(wide.toFloat(), high.toFloat())
        surface.canvas.drawImageRect(of, Rect.makeWH(of.width.toFloat(), of.height.toFloat()), to, SamplingMode.MITCHELL, null, true)
        surface.makeImageSnapshot()
    }
}

internal fun fileOfADialog(): File? {
    var chosen: File? = null
    EventQueue.invokeAndWait {
        val dialog = FileDialog(null as Frame?, "Sumpbook", FileDialog.LOAD).apply { isVisible = true }
        chosen = dialog.files.firstOrNull()
    }
    return chosen
}
