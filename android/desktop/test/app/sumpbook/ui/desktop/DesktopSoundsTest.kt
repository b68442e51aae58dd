package app.sumpbook.ui.desktop

import app.sumpbook.ui.screen.Cab
import app.sumpbook.ui.screen.whine
import java.io.File
import kotlin.test.Test
import kotlin.test.assertContentEquals
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertNull
import kotlin.test.assertTrue
import kotlinx.coroutines.runBlocking

/** A chosen sound is made as small as the core keeps it; what this computer cannot read is left for the core to judge. */
class DesktopSoundsTest {
    @Test
    fun `a chosen file has one channel and is kept by the core`() = Cab().use { cab ->
        val file = File.createTempFile("noise", ".wav").apply { deleteOnExit() }
        file.writeBytes(whine(2, channels = 2))
        val sounds = DesktopSounds { file }
        val chosen = runBlocking { sounds.pick() }!!
        assertTrue(chosen.size in 60_000..70_000, "two seconds of 16 bits at 16 kHz: ${chosen.size}")
        val kept = cab.phone.keepSound(chosen)
        assertContentEquals(chosen, cab.phone.sound(kept), "nothing was left to take out")
        file.writeBytes(byteArrayOf(1, 2, 3))
        assertContentEquals(byteArrayOf(1, 2, 3), runBlocking { sounds.pick() })
        assertFalse(runBlocking { sounds.play(byteArrayOf(1, 2, 3)) })
    }

    @Test
    fun `who chooses nothing has nothing`() {
        assertNull(runBlocking { DesktopSounds { null }.pick() })
        assertEquals(true, DesktopSounds { null }.files)
    }
}
