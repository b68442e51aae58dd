package app.sumpbook.ui.desktop

import androidx.compose.ui.unit.DpSize
import androidx.compose.ui.unit.dp
import androidx.compose.ui.window.WindowState
import androidx.compose.ui.window.singleWindowApplication
import app.sumpbook.core.Phone
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.App
import app.sumpbook.ui.desk.Desk
import java.io.File

/** The phone's app in a window, over the folder of an enrolled phone. */
fun main(words: Array<String>) {
    uniffiEnsureInitialized()
    val folder = File(words.firstOrNull() ?: error("say which folder: run FOLDER"))
    val phone = Phone.open(folder.path, null, null)
    val desk = Desk(phone, DesktopHandset())
    singleWindowApplication(WindowState(size = DpSize(411.dp, 891.dp)), title = "Sumpbook") {
        DesktopFace { App(desk) }
    }
}
