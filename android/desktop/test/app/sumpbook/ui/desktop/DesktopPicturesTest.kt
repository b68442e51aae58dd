package app.sumpbook.ui.desktop

import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.toPixelMap
import app.sumpbook.ui.turnedToTheRight
import java.awt.image.BufferedImage
import java.io.ByteArrayOutputStream
import javax.imageio.ImageIO
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertNotNull
import kotlin.test.assertNull
import kotlin.test.assertTrue

/** A photo is shown by what the platform decodes: upright, small, in its own colours. */
class DesktopPicturesTest {
    private val pictures = DesktopPictures { null }

    /** Red at its left, blue at its right. */
    private fun jpeg(wide: Int, high: Int): ByteArray {
        val drawn = BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB)
        for (x in 0 until wide) for (y in 0 until high) drawn.setRGB(x, y, if (x < wide / 2) 0xFF0000 else 0x0000FF)
        return ByteArrayOutputStream().also { ImageIO.write(drawn, "jpeg", it) }.toByteArray()
    }

    private fun red(of: Color) = of.red > 0.8f && of.blue < 0.2f
    private fun blue(of: Color) = of.blue > 0.8f && of.red < 0.2f

    @Test
    fun `a large photo is shown small and keeps its shape`() {
        val shown = assertNotNull(pictures.toShow(jpeg(2000, 1000), 720))
        assertEquals(720 to 360, shown.width to shown.height)
        val pixels = shown.toPixelMap()
        assertTrue(red(pixels[40, 180]) && blue(pixels[680, 180]))
    }

    @Test
    fun `a small one is not made larger`() {
        val shown = assertNotNull(pictures.toShow(jpeg(40, 20), 720))
        assertEquals(40 to 20, shown.width to shown.height)
    }

    @Test
    fun `what says that it lies on its side is shown upright`() {
        val shown = assertNotNull(pictures.toShow(turnedToTheRight(jpeg(400, 200)), 100))
        assertEquals(50 to 100, shown.width to shown.height)
        val pixels = shown.toPixelMap()
        assertTrue(red(pixels[25, 10]) && blue(pixels[25, 90]))
    }

    @Test
    fun `what is no picture is none`() = assertNull(pictures.toShow(byteArrayOf(1, 2, 3), 720))
}
