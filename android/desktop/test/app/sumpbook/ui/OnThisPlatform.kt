package app.sumpbook.ui

import androidx.compose.runtime.Composable
import androidx.compose.ui.graphics.ImageBitmap
import androidx.compose.ui.test.ComposeUiTest
import androidx.compose.ui.test.ExperimentalTestApi
import app.sumpbook.core.KeyKeeper
import app.sumpbook.ui.desk.Light
import app.sumpbook.ui.desk.Pixels
import app.sumpbook.ui.desk.Settled
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.desktop.DesktopPictures
import app.sumpbook.ui.desktop.FileKeeper
import java.io.File

/** A telephone's screen of 360 x 800, of which the system keeps 24 for its clock; the language is the face's here. */
@OptIn(ExperimentalTestApi::class)
@Suppress("UNUSED_PARAMETER")
fun onPhone(language: String = "en", wide: Int = 360, text: Float = 1f, block: suspend ComposeUiTest.() -> Unit) =
    onScreen(wide = wide, high = 776, text = text) { block() }

/** The app's face as the window gives it. */
@Composable
fun PhoneFace(settled: Settled, content: @Composable () -> Unit) =
    DesktopFace(settled.way, dark = settled.light == Light.DARK, high = settled.high, content = content)

/** A picture as this platform decodes it. */
fun pixelsOnThisPlatform(picture: ByteArray): Pixels? = DesktopPictures { null }.pixels(picture)

/** A picture as this platform shows it. */
fun shownOnThisPlatform(picture: ByteArray, longest: Int): ImageBitmap? = DesktopPictures { null }.toShow(picture, longest)

/** Where this platform keeps a phone's key. */
fun keeperIn(file: File): KeyKeeper = FileKeeper(file)
