package app.sumpbook.ui

import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.asSkiaBitmap
import androidx.compose.ui.test.ComposeUiTest
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.captureToImage
import androidx.compose.ui.test.onRoot
import androidx.compose.ui.test.v2.runSkikoComposeUiTest
import androidx.compose.ui.unit.Density
import java.io.File
import org.jetbrains.skia.EncodedImageFormat
import org.jetbrains.skia.Image

/** A phone's screen, 360 x 800 unless told otherwise, without a window. */
@OptIn(ExperimentalTestApi::class)
fun onScreen(wide: Int = 360, high: Int = 800, text: Float = 1f, block: suspend SkikoComposeUiTest.() -> Unit) =
    runSkikoComposeUiTest(Size(wide * PIXELS, high * PIXELS), Density(PIXELS, text)) { block() }

private const val PIXELS = 2f

/** Keeps what the screen shows as a picture, to be looked at. */
@OptIn(ExperimentalTestApi::class)
fun ComposeUiTest.picture(name: String) {
    val image = Image.makeFromBitmap(onRoot().captureToImage().asSkiaBitmap())
    val bytes = checkNotNull(image.encodeToData(EncodedImageFormat.PNG)).bytes
    File(System.getProperty("sumpbook.pictures"), "$name.png").apply { parentFile.mkdirs() }.writeBytes(bytes)
}
