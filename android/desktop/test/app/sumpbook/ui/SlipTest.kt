package app.sumpbook.ui

import androidx.compose.ui.test.ExperimentalTestApi
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.LockState
import app.sumpbook.core.Phone
import app.sumpbook.core.Signed
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.control.assertKeysWhole
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.desktop.FileKeeper
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import java.io.File
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** The code of a slip as the shop prints it, typed on a phone that has met nobody since. */
@OptIn(ExperimentalTestApi::class)
class SlipTest {
    private val yard = Yard()
    private val hand = HandHandset()

    @AfterTest
    fun clear() = yard.close()

    private fun added(hub: Hub, name: String): Phone {
        uniffiEnsureInitialized()
        val phone = Phone.enrolByCode(File(yard.root, name).path, hub.code(), name, FileKeeper(File(yard.root, "$name key")), hand.clock)
        phone.exchangeOnce(20_000u)
        yard.accepts(phone.about().key)
        phone.exchangeOnce(20_000u)
        return phone
    }

    private fun Phone.person(name: String) = fleet().people.first { it.name == name }.id

    /** A lamp is out: it locks the road, and the shop hears of it. */
    private fun Phone.lampOut() {
        val walk = beginPreTrip(unitAt("TH-02"), person("Bettina Quaye"), null)
        answerLine(walk, Answer("lamps-stop", "rear", AnswerKind.DEFECT, word = "out"))
        signPreTrip(walk, Signed(pinGiven = false), true, null)
        exchangeOnce(20_000u)
    }

    @Test
    fun `mistyped, another phone's, too often, and then the right one`() {
        val (phone, codes) = Hub(yard).use { hub ->
            val other = added(hub, "yard phone 1")
            val phone = added(hub, "yard phone 3")
            phone.lampOut()
            other.shutdown()
            val said = yard.says("certify", "TH-02", "lamps-stop/rear", "--repaired", "--by", "Wren Castellane", "--words", "new bulb", "--json")
            val certificate = Regex(""""certificate":"([^"]+)"""").find(said)!!.groupValues[1]
            phone to ConsoleVisit(yard, hub.address).slipCodes(certificate)
        }
        val own = codes.getValue("yard phone 3")
        val others = codes.getValue("yard phone 1")
        assertEquals(12, own.length)
        fun road() = phone.unit(phone.unitAt("TH-02"), phone.person("Amos Tillery")).roadAir.road.state

        // On the narrowest phone: the keys are whole just when a digit is to be mended.
        onScreen(320, 616) {
            val desk = Desk(phone, hand)
            val back = BackStack(Place.Today(), Signer(phone.person("Amos Tillery"))).apply { go(Place.Unit(phone.unitAt("TH-02"))) }
            setContent { DesktopFace { App(desk, back) } }
            val driver = Driver(this, desk, hand).apply { settle() }
            fun types(code: String) {
                repeat(12) { driver.erase() }
                driver.type(code)
                driver.main()
            }
            driver.tap("Type the slip's code")
            assertTrue(driver.sees("The slip has a code for each phone. This one is yard phone 3."), driver.strips())
            driver.type(own.dropLast(1))
            assertTrue(driver.sees("1 digit more"), driver.strips())
            types(own.dropLast(1) + (own.last().digitToInt() + 1) % 10)
            assertTrue(driver.sees("A digit is mistyped. Nothing was changed."), driver.strips())
            assertKeysWhole("mistyped, narrow")
            picture("slip-mistyped")
            repeat(2) {
                types(others)
                assertTrue(driver.sees("This code is not for this defect on this phone. Nothing was changed. Look on the slip"), driver.strips())
            }
            types(others)
            assertTrue(driver.sees("Wait 30 s, then look at the slip again"), driver.strips())
            picture("slip-wrong")
            // Even the right one waits, and the book knows it: a restart gives nothing back.
            types(own)
            assertTrue(Regex("""Too many codes were wrong\. This one was not looked at\. Wait (30|2\d) s""").containsMatchIn(driver.strips()), driver.strips())
            assertEquals(LockState.LOCKED, road())
            hand.sleep(31_000)
            types(own)
            assertTrue(back.top is Place.Unit, driver.strips())
            assertTrue(driver.sees("Stop lamps, rear: repaired, says the slip."), driver.strips())
            assertTrue(driver.sees("ROAD: awaiting review"), driver.strips())
            picture("slip-taken")
            assertEquals(LockState.AWAITING_REVIEW, road())
        }
        phone.shutdown()
    }
}
