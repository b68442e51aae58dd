package app.sumpbook.ui

import androidx.compose.ui.test.ExperimentalTestApi
import app.sumpbook.core.Phone
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.control.assertTargets
import app.sumpbook.ui.control.assertText
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.Home
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.desktop.FileKeeper
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.words.OwnWay
import java.io.File
import kotlin.test.AfterTest
import kotlin.test.BeforeTest
import kotlin.test.Test
import kotlin.test.assertEquals

/** Nothing is cut, nothing too small to hit, at any width, size of text, language and way of holding the phone. */
@OptIn(ExperimentalTestApi::class)
class ScreensFitTest {
    private val yard = Yard()
    private val hand = HandHandset()
    private lateinit var phone: Phone

    @BeforeTest
    fun enrol() {
        uniffiEnsureInitialized()
        phone = Phone.enrolByFile(File(yard.root, "phone").path, yard.invitation(), "yard phone 3", FileKeeper(File(yard.root, "key")), hand.clock)
    }

    @AfterTest
    fun clear() {
        phone.shutdown()
        yard.close()
    }

    private fun places(): List<Place> {
        val unit = phone.fleet().units.first { it.door == "TH-01" }.id
        val draft = phone.beginPreTrip(unit, amos(), null)
        val stops = listOf("1", "10", "14", "15", "17", "19").map { Place.Stop(unit, draft, it) }
        return listOf(
            Place.Today(), Place.AnotherUnit(), Place.Unit(unit), Place.LastReport(unit, draft), Place.NotWhatISee(unit, draft),
            Place.Sign(unit, draft), Place.Slip(unit),
        ) + stops
    }

    private fun amos() = phone.fleet().people.first { it.name == "Amos Tillery" }.id

    private fun fits(wide: Int, high: Int, text: Float, way: OwnWay) = onScreen(wide, high, text) {
        val desk = Desk(phone, hand)
        val places = places()
        val back = BackStack(Place.Today(), Signer(amos()))
        setContent { DesktopFace(way) { App(desk, back) } }
        // Everything that does not fit is told, not only the first.
        val wrong = ArrayList<String>()
        fun look(where: String) {
            runCatching { assertTargets(where) }.onFailure { wrong += it.message.orEmpty() }
            runCatching { assertText(where) }.onFailure { wrong += it.message.orEmpty() }
        }
        for (place in places) {
            runOnIdle { back.goInstead(place) }
            settle(desk)
            val where = "$place at $wide x $high, text $text, ${way.language}"
            picture("fit-$wide-$text-${way.language}-${where.substringBefore('|').substringBefore(' ')}-${place.toString().substringAfterLast('|').take(3)}")
            look(where)
        }
        runOnIdle { back.nobody() }
        settle(desk)
        look("who signs at $wide, text $text, ${way.language}")
        assertEquals(emptyList(), wrong)
    }

    @Test
    fun `as it was drawn`() = fits(360, 800, 1f, OwnWay())

    @Test
    fun `narrow, largest text, Spanish`() = fits(320, 640, 2f, OwnWay("es"))

    @Test
    fun `lying, larger text, left thumb`() = fits(800, 360, 1.3f, OwnWay(leftThumb = true))

    @Test
    fun `a phone that is added, narrow and large`() = onScreen(320, 640, 2f) {
        setContent { DesktopFace(OwnWay("es")) { Door(Home(File(yard.root, "new").path, null, hand.clock, hand)) } }
        val driver = Driver(this, null, hand)
        driver.waitFor("Un nombre")
        assertTargets("add a phone")
        assertText("add a phone")
    }
}
