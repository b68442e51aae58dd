package app.sumpbook.ui.desktop

import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.ui.input.key.Key
import androidx.compose.ui.input.key.KeyEvent
import androidx.compose.ui.input.key.KeyEventType
import androidx.compose.ui.input.key.key
import androidx.compose.ui.input.key.type
import androidx.compose.ui.unit.DpSize
import androidx.compose.ui.unit.dp
import androidx.compose.ui.window.WindowState
import androidx.compose.ui.window.singleWindowApplication
import app.sumpbook.ui.Door
import app.sumpbook.ui.desk.Home
import app.sumpbook.ui.desk.LocalPictures
import app.sumpbook.ui.desk.LocalSettings
import app.sumpbook.ui.desk.LocalSounds
import app.sumpbook.ui.place.BackStack
import java.io.File
import java.util.Locale

/** The phone's app in a window, over a phone's folder; a new one is added with a code of the shop. */
fun main(words: Array<String>) {
    val folder = File(words.firstOrNull() ?: error("say which folder: run FOLDER"))
    val settings = DesktopSettings(File(folder, "window.properties"), if (Locale.getDefault().language == "es") "es" else "en")
    // The core keeps the key as the command line does, so that both open one folder.
    val home = Home(folder.path, null, null, DesktopHandset { settings.now.value.buzz })
    val back = BackStack()
    val pictures = DesktopPictures()
    val sounds = DesktopSounds()
    // What a telephone's way back is, is Escape here.
    fun goesBack(key: KeyEvent) = (key.type == KeyEventType.KeyDown && key.key == Key.Escape).also { if (it) back.back() }
    singleWindowApplication(WindowState(size = DpSize(411.dp, 891.dp)), title = "Sumpbook", onPreviewKeyEvent = ::goesBack) {
        CompositionLocalProvider(LocalPictures provides pictures, LocalSounds provides sounds, LocalSettings provides settings) { SettledFace(settings) { Door(home, back) } }
    }
}
