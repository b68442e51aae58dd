package app.sumpbook.ui.screen

import androidx.compose.ui.graphics.ImageBitmap
import app.sumpbook.ui.desk.Pictures
import app.sumpbook.ui.desk.Pixels
import java.awt.image.BufferedImage
import java.io.ByteArrayOutputStream
import javax.imageio.ImageIO

/** A camera whose pictures are so high. */
class Camera(private val high: Int) : Pictures {
    override suspend fun take() = ByteArrayOutputStream().also { ImageIO.write(BufferedImage(32, high, BufferedImage.TYPE_INT_RGB), "jpeg", it) }.toByteArray()
    override suspend fun pick() = take()
    override suspend fun late(): ByteArray? = null
    override fun pixels(picture: ByteArray): Pixels? = null
    override fun toShow(picture: ByteArray, longest: Int): ImageBitmap? = null
}
