package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import app.sumpbook.core.AnswerKind
import app.sumpbook.ui.App
import app.sumpbook.ui.Driver
import app.sumpbook.ui.HandHandset
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.onPhone
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.signs
import app.sumpbook.ui.walkToSignature
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** The second driver of a day reads the first one's record and walks a short pre-trip. */
@OptIn(ExperimentalTestApi::class)
class ShortWalkTest {
    private val hand = HandHandset()
    private val cab = Cab(hand.clock)

    @AfterTest
    fun clear() = cab.close()

    @Test
    fun `twelve taps from the name to the signature`() {
        val bettina = cab.person("Bettina Quaye")
        cab.phone.choosePin(bettina, "161803", null)
        // Yesterday she walked round this very unit.
        hand.daysBack = 1
        cab.hasWalked(bettina, "TH-01")
        hand.daysBack = 0
        cab.signedWalk("TH-01")
        val before = cab.kinds().count { it == "pre-trip-section" }
        onPhone {
            val desk = Desk(cab.phone, hand)
            setContent { DesktopFace { App(desk) } }
            val driver = Driver(this, desk, hand).apply { settle() }
            driver.tapOn("Bettina Quaye")
            driver.tapOn("TH-01")
            picture("short-unit")
            assertEquals("Take over TH-01: short pre-trip", driver.mainWords())
            driver.main()
            picture("short-record")
            assertTrue(driver.sees("First driver's record") && driver.sees("Amos Tillery") && driver.sees("48 %"), driver.strips())
            driver.main()
            driver.walkToSignature { picture("short-stop-$it") }
            picture("short-sign")
            assertTrue(driver.sees("short pre-trip"), driver.strips())
            driver.signs("161803")
            assertTrue(driver.sees("Signed."), driver.strips())
            println("second driver, short walk, TH-01: ${driver.taps} taps, ${driver.digits} digits, ${driver.turns} page turns")
            assertTrue(driver.taps <= 12, "${driver.taps} taps")
            assertEquals(before + 1, cab.kinds().count { it == "pre-trip-section" })
        }
    }

    @Test
    fun `a level that stands elsewhere is dragged, and is this driver's own`() = with(cab) {
        signedWalk("TH-01")
        val bettina = person("Bettina Quaye")
        val first = phone.whereItIs(0u).days.flatMap { it.rows }.first { it.kind == "pre-trip-section" }.id
        val draft = phone.beginShortPreTrip(unit("TH-01"), bettina, first)
        val label = phone.signing(draft, null).stops.first { it.stop == "glass" }.label
        onPhone {
            val desk = Desk(phone, hand)
            val back = BackStack(Place.Stop(unit("TH-01"), draft, label), Signer(bettina))
            setContent { DesktopFace { App(desk, back) } }
            val driver = Driver(this, desk, hand).apply { settle() }
            assertEquals("Still 48 %, as shown", driver.mainWords())
            driver.drag(41)
            driver.main()
            val kept = checkNotNull(answer(draft, label, "oil-level"))
            assertEquals(AnswerKind.OK to listOf(41L), kept.answer to kept.figures.map { it.figure.digits })
        }
    }
}
