package app.sumpbook.ui

import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.graphics.ImageBitmap
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SkikoComposeUiTest
import app.sumpbook.ui.control.assertApart
import app.sumpbook.ui.control.assertKeysWhole
import app.sumpbook.ui.control.assertMainWhole
import app.sumpbook.ui.control.assertRead
import app.sumpbook.ui.control.assertTargets
import app.sumpbook.ui.control.assertText
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.Files
import app.sumpbook.ui.desk.LocalFiles
import app.sumpbook.ui.desk.LocalPictures
import app.sumpbook.ui.desk.LocalSettings
import app.sumpbook.ui.desk.LocalSounds
import app.sumpbook.ui.desk.Pictures
import app.sumpbook.ui.desk.Pixels
import app.sumpbook.ui.desk.Recorded
import app.sumpbook.ui.desk.Settings
import app.sumpbook.ui.desk.Settled
import app.sumpbook.ui.desk.Sounds
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.mark.Theme
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlinx.coroutines.Deferred
import kotlinx.coroutines.flow.MutableStateFlow
import org.junit.AfterClass
import org.junit.Assume.assumeTrue
import org.junit.BeforeClass

/**
 * Every screen, each held as people hold a phone: nothing cut, nothing over another, nothing too small to hit, and a
 * picture of each to be looked at.
 */
@OptIn(ExperimentalTestApi::class)
class EveryScreenTest {
    private class Mode(
        val name: String,
        val wide: Int = 360,
        val high: Int = 776,
        val text: Float = 1f,
        val way: OwnWay = OwnWay(),
        val theme: Theme = Theme(dark = false, high = false),
        /** Only for those who look: laying out all of them each time takes longer than all other tests of the app. */
        val toLookAt: Boolean = false,
        /** It was drawn for this: nobody scrolls to a key. */
        val keysWhole: Boolean = false,
    )

    private fun look(mode: Mode) {
        assumeTrue("set PICTURES for the pictures of ${mode.name}", !mode.toLookAt || System.getenv("PICTURES") != null)
        onScreen(mode.wide, mode.high, mode.text) { everyScreen(mode) }
    }

    private fun SkikoComposeUiTest.everyScreen(mode: Mode) {
        val desk = Desk(day.phone, day.hand)
        val wrong = ArrayList<String>()
        val screens = day.screens()
        var at by mutableStateOf(screens.first())
        val backs = screens.associateWith { BackStack(Place.Today(), day.signer).apply { go(it.place) } }
        setContent {
            CompositionLocalProvider(LocalSettings provides SetAs(mode.way), LocalPictures provides NoPictures, LocalSounds provides Listening, LocalFiles provides NoFiles) {
                DesktopFace(mode.way, mode.theme.dark, mode.theme.high) { at.show(desk, backs.getValue(at)) }
            }
        }
        for (screen in screens) {
            runOnIdle { at = screen }
            stands(desk)
            screen.then(Pressing(this, mode.way.language, day.hand) { stands(desk) })
            stands(desk)
            picture("every/${mode.name}/${screen.name}")
            holds("${screen.name}, ${mode.name}", wrong)
            if (mode.keysWhole) runCatching { assertKeysWhole("${screen.name}, ${mode.name}") }.onFailure { wrong += it.message.orEmpty() }
        }
        assertEquals("", wrong.joinToString("\n"))
    }

    /** Set as the mode has it. */
    private class SetAs(way: OwnWay) : Settings {
        override val now = MutableStateFlow(Settled(way, shopNumber = "555-0140"))
        override fun settle(to: Settled) = Unit
    }

    private object NoPictures : Pictures {
        override suspend fun take(): ByteArray? = null
        override suspend fun pick(): ByteArray? = null
        override suspend fun late(): ByteArray? = null
        override fun pixels(picture: ByteArray): Pixels? = null
        override fun toShow(picture: ByteArray, longest: Int): ImageBitmap? = null
    }

    /** A microphone that listens for as long as it is let. */
    private object Listening : Sounds {
        override val microphone = true
        override val files = true
        override suspend fun record(mostMs: Int, begun: () -> Unit, stop: Deferred<Unit>): Recorded {
            begun()
            stop.await()
            return Recorded.NoMicrophone
        }
        override suspend fun pick(): ByteArray? = null
        override suspend fun play(sound: ByteArray) = false
    }

    private object NoFiles : Files {
        override suspend fun give(name: String, bytes: ByteArray) = false
        override suspend fun choose(): ByteArray? = null
        override val given = MutableStateFlow<ByteArray?>(null)
        override fun taken() = Unit
    }

    private fun SkikoComposeUiTest.stands(desk: Desk) = repeat(2) {
        settle(desk)
        mainClock.advanceTimeBy(600)
    }

    /** Everything that does not hold is told, not only the first. */
    private fun SkikoComposeUiTest.holds(where: String, wrong: MutableList<String>) {
        runCatching { assertTargets(where) }.onFailure { wrong += it.message.orEmpty() }
        runCatching { assertText(where) }.onFailure { wrong += it.message.orEmpty() }
        runCatching { assertRead(where) }.onFailure { wrong += it.message.orEmpty() }
        runCatching { assertMainWhole(where) }.onFailure { wrong += it.message.orEmpty() }
        runCatching { assertApart(where) }.onFailure { wrong += it.message.orEmpty() }
    }

    @Test
    fun `as it was drawn`() = look(Mode("light", keysWhole = true))

    @Test
    fun dark() = look(Mode("dark", toLookAt = true, theme = Theme(dark = true, high = false)))

    @Test
    fun `high contrast, light`() = look(Mode("high-light", toLookAt = true, theme = Theme(dark = false, high = true)))

    @Test
    fun `high contrast, dark`() = look(Mode("high-dark", toLookAt = true, theme = Theme(dark = true, high = true)))

    @Test
    fun `in Spanish, metric`() = look(Mode("es", way = OwnWay("es", metric = true), toLookAt = true))

    @Test
    fun `largest text`() = look(Mode("large", text = 2f, toLookAt = true))

    @Test
    fun `narrow`() = look(Mode("narrow", wide = 320, high = 616, toLookAt = true))

    @Test
    fun `narrow, largest text, Spanish`() = look(Mode("narrow-large-es", 320, 616, 2f, OwnWay("es", metric = true)))

    @Test
    fun `lying, larger text, left thumb`() = look(Mode("lying", 800, 336, 1.3f, OwnWay(leftThumb = true)))

    @Test
    fun `a tablet, standing`() = look(Mode("tablet", 800, 1256, toLookAt = true))

    @Test
    fun `a tablet, lying`() = look(Mode("tablet-lying", 1280, 776, 1f, OwnWay("es"), toLookAt = true))

    @Test
    fun `all of a page`() = look(Mode("whole", 360, 2600, toLookAt = true))

    @Test
    fun `all of a page, large, in Spanish`() = look(Mode("whole-large-es", 360, 4000, 2f, OwnWay("es"), toLookAt = true))

    companion object {
        private lateinit var day: DayToLookAt

        @BeforeClass
        @JvmStatic
        fun begin() {
            day = DayToLookAt()
        }

        @AfterClass
        @JvmStatic
        fun end() = day.close()
    }
}
