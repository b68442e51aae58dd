package app.sumpbook.ui

import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.collectAsState
import androidx.compose.runtime.getValue
import androidx.compose.ui.test.ComposeUiTest
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasText
import app.sumpbook.core.Phone
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.Files
import app.sumpbook.ui.desk.Handset
import app.sumpbook.ui.desk.LocalFiles
import app.sumpbook.ui.desk.LocalPictures
import app.sumpbook.ui.desk.LocalSettings
import app.sumpbook.ui.desk.Pictures
import app.sumpbook.ui.desk.Settings
import app.sumpbook.ui.desk.Settled
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import kotlinx.coroutines.flow.MutableStateFlow
import java.awt.image.BufferedImage
import java.io.ByteArrayOutputStream
import javax.imageio.ImageIO

/** A phone of a yard in a test's hand, on whichever platform: its book, its place, and what it would do outside the app. */
@OptIn(ExperimentalTestApi::class)
class HeldPhone(val phone: Phone, person: String, first: Place) {
    /** Whom it called. */
    val called = mutableListOf<String>()

    /** What it gave away: name and bytes. */
    val handed = mutableListOf<Pair<String, ByteArray>>()

    /** What another app gives it. */
    val comesIn = MutableStateFlow<ByteArray?>(null)

    /** What its camera takes next. */
    var picture: ByteArray? = null

    /** How it is set. */
    val settled = MutableStateFlow(Settled())

    private val handset = object : Handset {
        override fun ticks() = System.nanoTime() / 1_000_000
        override fun now() = System.currentTimeMillis()
        override fun buzz() = Unit
        override fun call(number: String) {
            called += number
        }
    }
    private val files = object : Files {
        override suspend fun give(name: String, bytes: ByteArray) = true.also { handed += name to bytes }
        override suspend fun choose(): ByteArray? = comesIn.value
        override val given get() = comesIn
        override fun taken() {
            comesIn.value = null
        }
    }
    private val pictures = object : Pictures {
        override suspend fun take() = picture
        override suspend fun pick() = picture
        override suspend fun late(): ByteArray? = null
        override fun pixels(picture: ByteArray) = pixelsOnThisPlatform(picture)
        override fun toShow(picture: ByteArray, longest: Int) = shownOnThisPlatform(picture, longest)
    }
    private val settings = object : Settings {
        override val now get() = settled
        override fun settle(to: Settled) {
            settled.value = to
        }
    }
    val desk = Desk(phone, handset)
    val signer = Signer(phone.fleet().people.first { it.name == person }.id)
    val back = BackStack(first, signer)

    /** Shows it. */
    fun show(on: ComposeUiTest) = on.setContent {
        val now by settled.collectAsState()
        CompositionLocalProvider(LocalFiles provides files, LocalPictures provides pictures, LocalSettings provides settings) { PhoneFace(now) { App(desk, back) } }
    }

    companion object {
        /** Set up by an invitation: it records at once, with no hub. */
        fun invited(yard: HubYard, person: String, first: (Phone) -> Place): HeldPhone {
            uniffiEnsureInitialized()
            val phone = Phone.enrolByFile(yard.folder("phone").path, yard.invitation(), "yard phone 3", keeperIn(yard.folder("key")), null)
            return HeldPhone(phone, person, first(phone))
        }

        /** Set up by the hub's code, let in, with its books. */
        fun letIn(yard: HubYard, person: String, first: (Phone) -> Place): HeldPhone {
            uniffiEnsureInitialized()
            val phone = Phone.enrolByCode(yard.folder("phone").path, yard.code(), "yard phone 3", keeperIn(yard.folder("key")), null)
            phone.exchangeOnce(20_000u)
            yard.accept(phone.about().key)
            phone.exchangeOnce(20_000u)
            return HeldPhone(phone, person, first(phone))
        }
    }
}

/** Waits until these words stand on the screen. */
@OptIn(ExperimentalTestApi::class)
fun ComposeUiTest.shows(words: String) = waitUntil("it shows: $words", 20_000) {
    onAllNodes(hasText(words, substring = true)).fetchSemanticsNodes().isNotEmpty()
}

/** A unit by its door number. */
fun Phone.unitAt(door: String): String = fleet().units.first { it.door == door }.id

/** A picture a camera would take. */
fun aPhoto(): ByteArray = ByteArrayOutputStream().also { ImageIO.write(BufferedImage(32, 24, BufferedImage.TYPE_INT_RGB), "jpeg", it) }.toByteArray()
