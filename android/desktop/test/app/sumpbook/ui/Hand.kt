package app.sumpbook.ui

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.v2.runSkikoComposeUiTest
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.asSkiaBitmap
import androidx.compose.ui.test.captureToImage
import androidx.compose.ui.test.onRoot
import androidx.compose.ui.unit.Density
import app.sumpbook.ui.desk.Desk
import org.jetbrains.skia.EncodedImageFormat
import org.jetbrains.skia.Image
import java.io.File

/** A phone's screen, 360 x 800 unless told otherwise, without a window. */
@OptIn(ExperimentalTestApi::class)
fun onScreen(wide: Int = 360, high: Int = 800, text: Float = 1f, block: suspend SkikoComposeUiTest.() -> Unit) =
    runSkikoComposeUiTest(Size(wide * PIXELS, high * PIXELS), Density(PIXELS, text)) { block() }

private const val PIXELS = 2f

/** Waits until the core has answered and the screen shows it. */
@OptIn(ExperimentalTestApi::class)
fun SkikoComposeUiTest.settle(desk: Desk) {
    waitUntil(timeoutMillis = 20_000) {
        waitForIdle()
        desk.underWay.value == 0
    }
    waitForIdle()
}

/** Keeps what the screen shows as a picture, to be looked at. */
@OptIn(ExperimentalTestApi::class)
fun SkikoComposeUiTest.picture(name: String) {
    val image = Image.makeFromBitmap(onRoot().captureToImage().asSkiaBitmap())
    val bytes = checkNotNull(image.encodeToData(EncodedImageFormat.PNG)).bytes
    File(System.getProperty("sumpbook.pictures"), "$name.png").apply { parentFile.mkdirs() }.writeBytes(bytes)
}
