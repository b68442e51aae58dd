package app.sumpbook.ui

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.onNodeWithContentDescription
import app.sumpbook.core.Phone
import app.sumpbook.core.uniffiEnsureInitialized
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
import kotlin.test.assertFalse
import kotlin.test.assertTrue

/** The shop asks somebody for a new PIN: at the next signature the phone says so, and the old one holds no more. */
@OptIn(ExperimentalTestApi::class)
class NewPinTest {
    private val yard = Yard()
    private val hand = HandHandset()

    @AfterTest
    fun clear() = yard.close()

    @Test
    fun `the phone says who asks, and the new one signs`() {
        uniffiEnsureInitialized()
        val phone = Hub(yard).use { hub ->
            val phone = Phone.enrolByCode(File(yard.root, "yard phone 3").path, hub.code(), "yard phone 3", FileKeeper(File(yard.root, "key")), hand.clock)
            phone.exchangeOnce(20_000u)
            yard.accepts(phone.about().key)
            phone.exchangeOnce(20_000u)
            val amos = phone.person("Amos Tillery")
            phone.choosePin(amos, "271828", null)
            assertTrue(phone.pinChosen(amos))
            ConsoleVisit(yard, hub.address, role = "shop").asksForNewPin("Amos Tillery")
            phone.exchangeOnce(20_000u)
            phone
        }
        val amos = phone.person("Amos Tillery")
        assertEquals(false to true, phone.pinChosen(amos) to phone.newPinAsked(amos))
        assertFalse(phone.newPinAsked(phone.person("Bettina Quaye")), "nobody else is asked")

        val walk = phone.answeredWalk(phone.unitAt("TH-02"), amos, 12_047) { if (it == "%") 48 else 2 }
        onScreen {
            val desk = Desk(phone, hand)
            val back = BackStack(Place.Today(), Signer(amos)).apply { go(Place.Sign(phone.unitAt("TH-02"), walk)) }
            setContent { DesktopFace { App(desk, back) } }
            val driver = Driver(this, desk, hand).apply { settle() }
            onNodeWithContentDescription("The shop asks for a new PIN: choose 6 digits", substring = true).assertExists()
            picture("sign-new-pin")
            repeat(2) {
                driver.type("314159")
                driver.main()
            }
            assertTrue(back.top is Place.Unit, driver.strips())
        }
        assertEquals(true to false, phone.pinChosen(amos) to phone.newPinAsked(amos))
        phone.shutdown()
    }

    private fun Phone.person(name: String) = fleet().people.first { it.name == name }.id
}
