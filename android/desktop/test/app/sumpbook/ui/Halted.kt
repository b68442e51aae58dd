package app.sumpbook.ui

import androidx.compose.ui.test.ExperimentalTestApi
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.Home
import app.sumpbook.ui.desk.HomeNow
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.desktop.FileKeeper
import java.io.File
import kotlinx.coroutines.runBlocking

/**
 * The app in a virtual machine of its own, halted in the middle of a walk: nothing is closed, nothing is waited for.
 *
 * Words: the folder, the key's file, the driver, the door number, and after how many stops the tap comes that is its last.
 */
@OptIn(ExperimentalTestApi::class)
object Halted {
    @JvmStatic
    fun main(words: Array<String>) {
        uniffiEnsureInitialized()
        val hand = HandHandset()
        val desk = opened(File(words[0]), File(words[1]), hand)
        onScreen {
            setContent { DesktopFace { App(desk) } }
            val driver = Driver(this, desk, hand).apply { settle() }
            if (driver.sees(words[2])) {
                driver.tapOn(words[2])
                driver.tapOn(words[3])
                driver.main()
                driver.main()
            } else {
                println("OPENED ${driver.strips()}")
            }
            repeat(words[4].toInt()) { driver.stopDone() }
            println("STANDS ${driver.header()}")
            System.out.flush()
            driver.mainWithoutWaiting()
            Runtime.getRuntime().halt(9)
        }
    }
}

/** The desk of a phone that is set up. */
fun opened(folder: File, key: File, hand: HandHandset): Desk = runBlocking {
    val now = Home(folder.path, FileKeeper(key), hand.clock, hand).open()
    (now as? HomeNow.Open ?: error("not open: $now")).desk
}
