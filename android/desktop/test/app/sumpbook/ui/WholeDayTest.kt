package app.sumpbook.ui

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SkikoComposeUiTest
import app.sumpbook.core.Phone
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.desk.Home
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.desktop.FileKeeper
import java.io.File
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue
import kotlinx.coroutines.runBlocking

/** A day of two phones with a real hub over TLS: added by code, killed in the middle, and told in the shop's own day sheet. */
@OptIn(ExperimentalTestApi::class)
class WholeDayTest {
    private val yard = Yard()
    private val hub = Hub(yard)

    @AfterTest
    fun clear() {
        hub.close()
        yard.close()
    }

    private inner class OnePhone(val name: String) {
        val folder = File(yard.root, name)
        val key = File(yard.root, "$name key")
        val hand = HandHandset()

        /** From the box to the fleet, on its own screen. */
        fun isAdded() = onScreen {
            val back = app.sumpbook.ui.place.BackStack()
            setContent { DesktopFace { Door(Home(folder.path, FileKeeper(key), hand.clock, hand), back) } }
            val driver = Driver(this, null, hand)
            driver.waitFor("A name for this phone")
            driver.write("A name for this phone", name)
            driver.write("The shop's code", hub.code().chunked(4).joinToString(" "))
            picture("$name-code")
            driver.main()
            driver.waitFor("This phone's key")
            picture("$name-waiting")
            val shown = driver.keyShown()
            // The first exchange asks to be let in; somebody at the shop compares the keys and does so.
            yard.accepts(shown)
            driver.waitFor("Who is signing?")
            println("$name: added in ${driver.taps} taps and two fields")
        }

        /** Another virtual machine, halted in the middle of a tap. */
        fun isKilled(person: String, door: String, stops: Int): String {
            val (exit, said) = run(
                File(System.getProperty("java.home"), "bin/java").path, "-cp", System.getProperty("java.class.path"),
                "-Djava.awt.headless=true", "-Duniffi.component.sumpbook.libraryOverride=${System.getProperty("sumpbook.library")}",
                "app.sumpbook.ui.Halted", folder.path, key.path, person, door, stops.toString(),
            )
            assertEquals(9, exit, said)
            return said
        }

        /** The app on its screen, from its opening on. */
        fun onItsScreen(drive: SkikoComposeUiTest.(Driver) -> Unit) = onScreen {
            val desk = opened(folder, key, hand)
            setContent { DesktopFace { App(desk) } }
            drive(Driver(this, desk, hand).apply { settle() })
        }

        /** How many entries only this phone has. */
        fun onlyThere(): UInt = Phone.open(folder.path, FileKeeper(key), hand.clock).let { phone ->
            phone.whereItIs(0u).counts.onPhone.also { phone.shutdown() }
        }

        fun exchanges() {
            val desk = opened(folder, key, hand)
            val told = runBlocking { desk.exchangeOnce(20_000) }
            assertTrue(told is app.sumpbook.ui.desk.Told.Got && told.it.report.whole, "$told")
        }
    }

    @Test
    fun `a walk killed twice reaches the shop whole`() {
        uniffiEnsureInitialized()
        val one = OnePhone("yard phone 1")
        val two = OnePhone("yard phone 2")
        one.isAdded()
        two.isAdded()

        val first = one.isKilled("Amos Tillery", "TH-01", stops = 4)
        assertTrue("STANDS 5 / 19" in first, first)
        val second = one.isKilled("Amos Tillery", "TH-01", stops = 1)
        // The tap that was under way is kept whole or not at all.
        val opened = Regex("""closed at stop (\d+)""").find(second)?.groupValues?.get(1)?.toInt()
        assertTrue(opened == 5 || opened == 6, second)

        one.onItsScreen { driver ->
            picture("opened-again")
            // At stop 9 a wheel is cracked: it locks the road until the shop certifies it.
            driver.walkToLine("Wheels, right")
            driver.tapOn("Wheels, right")
            driver.tap("cracked")
            picture("defect")
            driver.main()
            picture("defect-kept")
            driver.walkToSignature()
            picture("sign-with-defect")
            driver.signs("314159")
            assertTrue(driver.sees("Signed. ROAD locked"), driver.strips())
        }
        one.exchanges()
        two.exchanges()
        val sheet = yard.says("day-sheet")
        assertTrue("1 of 7 expected out have reported" in sheet, sheet)
        assertTrue(Regex("""TH-01 +Wheels, right +cracked; Amos Tillery \d\d:\d\d +- +road +open""").containsMatchIn(sheet), sheet)
        assertTrue(Regex("""TH-01 +road +\d\d:\d\d +Wheels, right: cracked""").containsMatchIn(sheet), sheet)

        two.onItsScreen { driver ->
            driver.tapOn("Bettina Quaye")
            driver.tapOn("TH-01")
            picture("second-phone-locked")
            assertTrue(driver.sees("ROAD: LOCKED"), driver.strips())
            assertTrue(driver.sees("Wheels, right: cracked, Amos Tillery"), driver.strips())
        }
        yard.says("certify", "TH-01", "wheels/right", "--repaired", "--by", "Wren Castellane", "--words", "new wheel")
        two.exchanges()
        two.onItsScreen { driver ->
            driver.tapOn("Bettina Quaye")
            driver.tapOn("TH-01")
            assertTrue(driver.sees("ROAD: awaiting review"), driver.strips())
            picture("second-phone-certified")
            driver.tap("More")
            picture("second-phone-more")
            driver.tap("Another pre-trip")
            picture("second-phone-review")
            assertTrue(driver.sees("Wheels, right: cracked") && driver.sees("'new wheel'"), driver.strips())
            assertEquals("Read and reviewed", driver.mainWords())
            driver.main()
            driver.walkToSignature()
            driver.signs("161803")
            assertTrue(driver.sees("Signed.") && driver.sees("ROAD: no lock on record"), driver.strips())
            assertEquals("Report end of day", driver.mainWords())
            driver.main()
            driver.tap("None found")
            picture("second-phone-end-of-day")
            driver.signs("161803")
            // Her shift is over: her name is off the phone, and what she did last is still read.
            assertTrue(driver.sees("Signed.") && driver.sees("Who is signing?"), driver.strips())
            picture("second-phone-shift-over")
            driver.tapOn("Bettina Quaye")
            driver.tapOn("TH-01")
            assertTrue(driver.sees("Day ended: Bettina Quaye"), driver.strips())
            picture("second-phone-day-ended")
        }
        two.exchanges()
        one.exchanges()
        val after = yard.says("day-sheet")
        assertTrue("No lock-out on record." in after, after)
        assertTrue(Regex("""TH-01 +Wheels, right +cracked; Amos Tillery \d\d:\d\d +OK; Bettina Quaye \d\d:\d\d +road +closed""").containsMatchIn(after), after)
        for (phone in listOf(one, two)) assertEquals(0u, phone.onlyThere(), phone.name)
    }
}
