package app.sumpbook.ui.screen

import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveableStateHolder
import androidx.compose.runtime.setValue
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import app.sumpbook.core.Phone
import app.sumpbook.core.PhoneClock
import app.sumpbook.core.Signed
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.App
import app.sumpbook.ui.Yard
import app.sumpbook.ui.answeredWalk
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.LocalPictures
import app.sumpbook.ui.desk.LocalSounds
import app.sumpbook.ui.desk.Pictures
import app.sumpbook.ui.desk.Sounds
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.desktop.DesktopHandset
import app.sumpbook.ui.desktop.FileKeeper
import app.sumpbook.ui.mark.Theme
import app.sumpbook.ui.onScreen
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.hasWalked
import app.sumpbook.ui.settle
import app.sumpbook.ui.stops
import app.sumpbook.ui.words.OwnWay
import java.io.File
import java.time.OffsetDateTime
import java.time.ZoneOffset

/** A phone of the invented fleet, enrolled at a real shop on this machine, and its app opened at any place. */
@OptIn(ExperimentalTestApi::class)
class Cab(clock: PhoneClock? = null, atShop: Yard.() -> Unit = {}) : AutoCloseable {
    private val yard = Yard()
    val phone: Phone
    lateinit var back: BackStack
    private lateinit var desk: Desk
    private var held by mutableStateOf(true)

    init {
        uniffiEnsureInitialized()
        yard.atShop()
        phone = Phone.enrolByFile(File(yard.root, "phone").path, yard.invitation(), "yard phone 3", FileKeeper(File(yard.root, "key")), clock)
    }

    /** A unit by its door number. */
    fun unit(door: String): String = phone.fleet().units.first { it.door == door }.id

    /** A person by name. */
    fun person(name: String = "Amos Tillery"): String = phone.fleet().people.first { it.name == name }.id

    /** The app, opened there. */
    fun at(
        place: Place,
        way: OwnWay = OwnWay(),
        wide: Int = 360,
        high: Int = 800,
        text: Float = 1f,
        theme: Theme = Theme(dark = false, high = false),
        signer: Signer = Signer(person()),
        pictures: Pictures? = null,
        sounds: Sounds? = null,
        block: suspend SkikoComposeUiTest.() -> Unit,
    ) = onScreen(wide, high, text) {
        desk = Desk(phone, DesktopHandset())
        back = BackStack(Place.Today(), signer)
        back.go(place)
        held = true
        setContent {
            val kept = rememberSaveableStateHolder()
            CompositionLocalProvider(LocalPictures provides pictures, LocalSounds provides sounds) {
                DesktopFace(way, theme.dark, theme.high) { if (held) kept.SaveableStateProvider("app") { App(desk, back) } }
            }
        }
        settled()
        block()
    }

    /** The phone is turned: what is on the screen is made anew, and only what is kept comes back. */
    fun SkikoComposeUiTest.turned() {
        runOnIdle { held = false }
        waitForIdle()
        runOnIdle { held = true }
        settled()
    }

    /** Waits until the core has answered, and what it told of was asked for again. */
    fun SkikoComposeUiTest.settled() = repeat(2) {
        settle(desk)
        Thread.sleep(20)
    }

    /** Presses what has these words, and waits. */
    fun SkikoComposeUiTest.press(words: String) {
        onNodeWithText(words).performClick()
        settled()
    }

    /** Scrolls to what has these words, presses it, and waits. */
    fun SkikoComposeUiTest.find(words: String) {
        onNodeWithText(words).performScrollTo().performClick()
        settled()
    }

    /** Says a line of JSON as so many days ago: kind and body, with hours where they were read. */
    fun says(daysAgo: Long, door: String, kind: String, body: String, hours: String? = null) {
        val at = OffsetDateTime.now(ZoneOffset.UTC).minusDays(daysAgo)
        val read = hours?.let { ""","hours":"$it"""" }.orEmpty()
        phone.recordLine("""{"unit":"$door","person":"Amos Tillery","at":"$at","source":"paper"$read,"kind":"$kind","body":$body}""")
    }

    /** A walk of which nothing is answered. */
    fun walk(door: String): String = phone.beginPreTrip(unit(door), person(), null)

    /** The stops of a walk, in order. A label it has not gives another stop. */
    /** The label of the stop with this key. */
    fun stop(draft: String, key: String): String = phone.stops(draft).first { it.stop == key }.label

    /** What a walk says of a line now. */
    fun answer(draft: String, stop: String, line: String) =
        checkNotNull(phone.stop(draft, stop, emptyList(), 0u)).lines.first { it.id == line }.answer

    /** Kept entries of a kind, newest first, as the phone lists them. */
    fun kinds(): List<String> = phone.whereItIs(1u).days.flatMap { day -> day.rows.map { it.kind } }

    /** This person has walked often enough: no hints any more. */
    fun hasWalked(person: String, door: String = "TH-05") = phone.hasWalked(unit(door), person)

    /** A walk in which everything is answered OK with its figures, signed. */
    fun signedWalk(door: String) {
        phone.signPreTrip(answeredWalk(door), Signed(pinGiven = false), false, 600_000u)
    }

    /** A walk in which everything is answered OK with its figures. */
    fun answeredWalk(door: String, person: String = person()): String = phone.answeredWalk(unit(door), person, 28_624) { 48 }

    override fun close() {
        phone.shutdown()
        yard.close()
    }
}
