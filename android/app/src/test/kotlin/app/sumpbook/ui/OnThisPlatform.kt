package app.sumpbook.ui

import android.content.ComponentName
import android.graphics.Bitmap
import androidx.activity.ComponentActivity
import androidx.compose.runtime.Composable
import androidx.compose.ui.graphics.ImageBitmap
import androidx.compose.ui.graphics.asAndroidBitmap
import androidx.compose.ui.platform.LocalContext
import androidx.compose.ui.test.ComposeUiTest
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.captureToImage
import androidx.compose.ui.test.onRoot
import androidx.compose.ui.test.v2.runComposeUiTest
import app.sumpbook.AndroidFace
import app.sumpbook.MemorySealer
import app.sumpbook.core.KeyKeeper
import app.sumpbook.fontFamily
import app.sumpbook.hand.pixelsOf
import app.sumpbook.hand.shownAs
import app.sumpbook.key.KeystoreKeeper
import app.sumpbook.ui.desk.Pixels
import app.sumpbook.ui.desk.Settled
import java.io.File
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf

/** A telephone's screen. */
@OptIn(ExperimentalTestApi::class)
fun onPhone(language: String = "en", wide: Int = 360, text: Float = 1f, block: suspend ComposeUiTest.() -> Unit) {
    RuntimeEnvironment.setQualifiers("+$language-w${wide}dp-h800dp")
    RuntimeEnvironment.setFontScale(text)
    val app = RuntimeEnvironment.getApplication()
    shadowOf(app.packageManager).addActivityIfNotPresent(ComponentName(app, ComponentActivity::class.java))
    runComposeUiTest { block() }
}

/** The app's face as the window gives it. */
@Composable
fun PhoneFace(settled: Settled, content: @Composable () -> Unit) = AndroidFace(fontFamily(LocalContext.current.assets), settled, content)

/** A picture as this platform decodes it. */
fun pixelsOnThisPlatform(picture: ByteArray): Pixels? = pixelsOf(picture)

/** A picture as this platform shows it. */
fun shownOnThisPlatform(picture: ByteArray, longest: Int): ImageBitmap? = shownAs(picture, longest)

/** Where this platform keeps a phone's key. */
fun keeperIn(file: File): KeyKeeper = KeystoreKeeper(file, MemorySealer())

/** Keeps what the screen shows as a picture, to be looked at. */
@OptIn(ExperimentalTestApi::class)
fun ComposeUiTest.picture(name: String) {
    val shown = onRoot().captureToImage().asAndroidBitmap()
    val file = File(System.getProperty("sumpbook.pictures"), "$name.png").apply { parentFile!!.mkdirs() }
    file.outputStream().use { shown.compress(Bitmap.CompressFormat.PNG, 100, it) }
}
