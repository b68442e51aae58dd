package app.sumpbook.ui.desktop

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
}

private fun fileOfADialog(): File? {
    var chosen: File? = null
    EventQueue.invokeAndWait {
        val dialog = FileDialog(null as Frame?, "Sumpbook", FileDialog.LOAD).apply { isVisible = true }
        chosen = dialog.files.firstOrNull()
    }
    return chosen
}
