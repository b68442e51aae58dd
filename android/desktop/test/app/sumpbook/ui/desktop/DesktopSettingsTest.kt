package app.sumpbook.ui.desktop

import app.sumpbook.ui.desk.Light
import app.sumpbook.ui.desk.Settled
import app.sumpbook.ui.words.OwnWay
import java.io.File
import kotlin.io.path.createTempDirectory
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals

/** How the window is set outlives it, and what does not read is as if nothing had been set. */
class DesktopSettingsTest {
    private val folder = createTempDirectory("settings").toFile()
    private val file = File(folder, "window.properties")

    @AfterTest
    fun clear() {
        folder.deleteRecursively()
    }

    @Test
    fun `each choice is there again after the window was closed`() {
        val all = Settled(OwnWay("es", metric = true, leftThumb = true), 1.6f, high = true, light = Light.DARK, buzz = false, shopNumber = "555-0140")
        assertEquals(Settled(OwnWay("en")), DesktopSettings(file, "en").now.value)
        DesktopSettings(file, "en").settle(all)
        assertEquals(all, DesktopSettings(file, "en").now.value)
        assertEquals(listOf("window.properties"), folder.list()?.toList())
    }

    @Test
    fun `a broken file, and values nobody has, are as if nothing had been set`() {
        file.writeText("text=enormous\nhigh=perhaps\nlight=GREEN\n\\u00zz")
        assertEquals(Settled(OwnWay("es")), DesktopSettings(file, "es").now.value)
        file.writeText("text=9\nlanguage=es")
        assertEquals(2f to "es", DesktopSettings(file, "en").now.value.let { it.text to it.way.language })
    }

    @Test
    fun `a folder that takes nothing keeps the choice for this window`() {
        val under = File(file.apply { writeText("a file") }, "window.properties")
        val settings = DesktopSettings(under, "en")
        settings.settle(Settled(high = true))
        assertEquals(true, settings.now.value.high)
    }
}
