package app.sumpbook.ui

import androidx.compose.ui.test.ExperimentalTestApi
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Phone
import app.sumpbook.core.Signed
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.desktop.FileKeeper
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.words.OwnWay
import java.io.File
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertTrue

/** Whoever told of a defect reads on the day's screen what became of it. */
@OptIn(ExperimentalTestApi::class)
class BecameTest {
    private val yard = Yard()
    private val hand = HandHandset()

    init {
        uniffiEnsureInitialized()
    }

    @AfterTest
    fun clear() = yard.close()

    private fun Phone.today(person: String, language: String = "en", look: (Driver, BackStack) -> Unit) = onScreen(high = 1_400) {
        val desk = Desk(this@today, hand)
        val back = BackStack(Place.Today(), Signer(fleet().people.first { it.name == person }.id))
        setContent { DesktopFace(OwnWay(language)) { App(desk, back) } }
        val driver = Driver(this, desk, hand).apply { settle() }
        picture("became-$language-$person".replace(' ', '-'))
        look(driver, back)
    }

    @Test
    fun `from this phone to the shop's certificate, for whoever told it`() {
        Hub(yard).use { hub ->
            val phone = Phone.enrolByCode(File(yard.root, "phone").path, hub.code(), "yard phone 3", FileKeeper(File(yard.root, "key")), hand.clock)
            phone.exchangeOnce(20_000u)
            yard.accepts(phone.about().key)
            phone.exchangeOnce(20_000u)
            val walk = phone.beginPreTrip(phone.unitAt("TH-02"), phone.fleet().people.first { it.name == "Bettina Quaye" }.id, null)
            phone.answerLine(walk, Answer("lamps-stop", "rear", AnswerKind.DEFECT, word = "out"))
            phone.signPreTrip(walk, Signed(pinGiven = false), true, null)
            phone.today("Bettina Quaye") { driver, back ->
                assertTrue(driver.sees("What became of what you told"), driver.strips())
                assertTrue(driver.sees("Not yet at the shop: only on this phone"), driver.strips())
                driver.tapOn("TH-02, ")
                assertEquals(Place.Unit(phone.unitAt("TH-02")), back.top)
            }
            phone.today("Amos Tillery") { driver, _ -> assertFalse(driver.sees("What became of what you told"), driver.strips()) }
            phone.exchangeOnce(20_000u)
            phone.today("Bettina Quaye") { driver, _ -> assertTrue(driver.sees("The shop has it"), driver.strips()) }
            yard.says("certify", "TH-02", "lamps-stop/rear", "--repaired", "--by", "Wren Castellane", "--words", "new bulb")
            phone.exchangeOnce(20_000u)
            phone.today("Bettina Quaye") { driver, _ ->
                assertTrue(driver.sees("repaired, Wren Castellane"), driver.strips())
                assertTrue(driver.sees("'new bulb'"), driver.strips())
            }
            phone.today("Bettina Quaye", "es") { driver, _ -> assertTrue(driver.sees("reparado, Wren Castellane"), driver.strips()) }
            phone.shutdown()
        }
    }
}
