package app.sumpbook.ui

import androidx.compose.ui.test.ExperimentalTestApi
import app.sumpbook.ui.desk.Home
import app.sumpbook.ui.desktop.DesktopFace
import com.sun.jna.NativeLibrary
import java.io.File
import java.lang.reflect.Modifier

/** The app in a virtual machine of its own over a core of another version; says what its screen shows. Words: the folder. */
@OptIn(ExperimentalTestApi::class)
object UnfitLibrary {
    @JvmStatic
    fun main(words: Array<String>) {
        val hand = HandHandset()
        onScreen {
            setContent { DesktopFace { Door(Home(words[0], null, hand.clock, hand)) } }
            val driver = Driver(this, null, hand)
            driver.waitFor("Try again")
            println("SHOWS ${driver.strips()}")
        }
        System.out.flush()
        Runtime.getRuntime().halt(0)
    }

    /** A library with the names the bindings ask for and other checksums: as one of another version has. None without a C compiler. */
    fun made(folder: File): File? {
        val asked = Class.forName("app.sumpbook.core.IntegrityCheckingUniffiLib", false, javaClass.classLoader).declaredMethods
            .filter { Modifier.isNative(it.modifiers) }.map { it.name }
        val contract = asked.single { it.endsWith("uniffi_contract_version") }
        val now = NativeLibrary.getInstance(System.getProperty("sumpbook.library")).getFunction(contract).invokeInt(emptyArray())
        val source = File(folder, "other.c").apply { writeText(asked.joinToString("\n") { "int $it(void) { return ${if (it == contract) now else 1}; }" }) }
        val library = File(folder, "libother.so")
        val (exit, said) = runCatching { run("cc", "-shared", "-fPIC", "-o", library.path, source.path) }.getOrElse { return null }
        check(exit == 0) { said }
        return library
    }
}
