package app.sumpbook.ui

import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.ui.test.ComposeUiTest
import androidx.compose.ui.test.ExperimentalTestApi
import app.sumpbook.core.Glass
import app.sumpbook.core.KeyKeeper
import app.sumpbook.core.Phone
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.LocalPictures
import app.sumpbook.ui.desk.Pictures
import app.sumpbook.ui.desk.Settled
import kotlinx.coroutines.runBlocking
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test

/**
 * A whole day without signal, then one exchange with a real hub over TLS: two phones on one unit, the walk left twice in the
 * middle with nothing closed, and the shop's day sheet holds exactly what was done. The same on each platform.
 */
@OptIn(ExperimentalTestApi::class)
abstract class Day {
    private val yard = HubYard()
    private val hand = HandHandset()
    private val opened = mutableListOf<Phone>()

    /** What seals a phone's key outlives its app. */
    private val keepers = mutableMapOf<String, KeyKeeper>()

    @After
    fun clear() {
        opened.forEach { it.shutdown() }
        yard.close()
    }

    private fun keeper(name: String) = keepers.getOrPut(name) { keeperIn(yard.folder("$name key")) }

    /** From the hub's code to the fleet's books. */
    private fun added(name: String) {
        uniffiEnsureInitialized()
        val phone = Phone.enrolByCode(yard.folder(name).path, yard.code(), name, keeper(name), hand.clock)
        phone.exchangeOnce(20_000u)
        yard.accept(phone.about().key)
        phone.exchangeOnce(20_000u)
        phone.shutdown()
    }

    /** The app opened over a phone's folder. What was open before is not closed first: its process is gone. */
    private fun app(name: String, drive: (ComposeUiTest, Driver, Phone) -> Unit) = onPhone {
        val phone = Phone.open(yard.folder(name).path, keeper(name), hand.clock).also(opened::add)
        val desk = Desk(phone, hand)
        val camera = object : Pictures {
            override suspend fun take() = aPhoto()
            override suspend fun pick() = aPhoto()
            override suspend fun late(): ByteArray? = null
            override fun pixels(picture: ByteArray) = null
            override fun toShow(picture: ByteArray, longest: Int) = null
        }
        setContent { CompositionLocalProvider(LocalPictures provides camera) { PhoneFace(Settled()) { App(desk) } } }
        drive(this, Driver(this, desk, hand).apply { settle() }, phone)
    }

    @Test
    fun aDayIsToldToTheShopAsItWas() {
        yard.begin()
        added(ONE)
        added(TWO)

        app(ONE) { _, driver, _ ->
            driver.tapOn("Amos Tillery")
            driver.tapOn("TH-01")
            driver.main()
            driver.main()
            repeat(4) { driver.stopDone() }
        }
        app(ONE) { screen, driver, _ ->
            assertTrue(driver.strips(), driver.sees("closed at stop 5"))
            screen.picture("day-opened-again")
            driver.walkToLine("Wheels, right")
            driver.tapOn("Wheels, right")
            driver.tap("cracked")
            driver.tap("Take a photo")
            driver.main()
            driver.stopDone()
        }
        app(ONE) { screen, driver, phone ->
            driver.walkToSignature()
            driver.signs("314159")
            assertTrue(driver.strips(), driver.sees("Signed. ROAD locked"))
            assertTrue(driver.strips(), driver.sees("ROAD locked on this phone; the shop does not know yet. Call."))
            driver.pours()
            driver.note()
            driver.endOfDay("314159")
            screen.picture("day-ended")
            assertEquals("nothing went to the shop", 0u, phone.whereItIs(0u).counts.atShop)
        }
        // Meanwhile another crew's phone on the same unit, which knows nothing of all that.
        app(TWO) { _, driver, phone ->
            driver.tapOn("Bettina Quaye")
            driver.tapOn("TH-01")
            assertTrue(driver.strips(), driver.sees("no lock on record"))
            driver.note("FILTER")
            assertEquals(0u, phone.whereItIs(0u).counts.atShop)
        }

        for (name in listOf(ONE, TWO, ONE)) exchanged(name)
        val sheet = yard.says("day-sheet")
        assertTrue(sheet, Regex("""TH-01 +Wheels, right +cracked; Amos Tillery""").containsMatchIn(sheet))
        assertTrue(sheet, Regex("""TH-01 +road +\d\d:\d\d +Wheels, right: cracked""").containsMatchIn(sheet))
        assertTrue(sheet, Regex("""TH-01 .*0\.375 qt +30 % to 50 %""").containsMatchIn(sheet))
        for (shown in listOf("SERVICE 50 H", "FILTER")) assertTrue(sheet, shown in sheet)
        assertTrue(sheet, Regex("""SERVICE 50 H +Amos Tillery \d\d:\d\d +Amos Tillery""").containsMatchIn(sheet))
        assertEquals("one top-up", 1, Regex("""0\.375 qt""").findAll(sheet).count())

        // Exactly that: each kind so often, and nothing else of this unit.
        val kinds = yard.says("take-out", "all-records", "--unit", "TH-01").lines().drop(1).map { it.split(',')[3] }
        val told = kinds.filter { it != "day-status-set" }.groupingBy { it }.eachCount()
        val walked = listOf("pre-trip-section" to 1, "hour-reading" to 1, "review" to 1).filter { (kind, _) -> kind in told }
        assertEquals(mapOf("pre-trip-section" to 1, "top-up" to 1, "display-note" to 2, "acknowledgement" to 2, "end-of-day" to 1) + walked, told)
        assertTrue("$told", walked.any { it.first == "pre-trip-section" })
        val inspections = yard.says("take-out", "inspections", "--unit", "TH-01")
        assertTrue(inspections, "Amos Tillery" in inspections && "Bettina Quaye" !in inspections)
        val photos = yard.photos()
        assertEquals("the defect's photo is at the shop, and no other", 1, photos.size)

        // Both see the merge.
        for (name in listOf(ONE, TWO)) app(name) { _, _, phone ->
            val unit = phone.unitAt("TH-01")
            assertEquals(name, setOf("SERVICE 50 H", "FILTER"), phone.display(unit, null).open.map { it.asShown }.toSet())
            assertEquals(name, Glass.Percent(50u), phone.unit(unit, phone.fleet().people.first().id).oil.last?.glass)
            assertEquals(name, 1u, phone.unit(unit, phone.fleet().people.first().id).openDefects)
            assertEquals(name, 0u, phone.whereItIs(0u).counts.onPhone)
        }
    }

    private fun exchanged(name: String) = app(name) { _, _, phone ->
        val told = runBlocking { phone.exchangeOnce(30_000u) }
        assertTrue("$told", told.whole)
    }

    private companion object {
        const val ONE = "yard phone 1"
        const val TWO = "yard phone 2"
    }
}

/** A top-up of the unit on the screen: three pours of an eighth of a quart, 30 to 50 %. */
@OptIn(ExperimentalTestApi::class)
private fun Driver.pours() {
    tap("Oil")
    tap("Gauge reads 0")
    tap("Blow-down ended, silent")
    tap("The drum says mineral ISO VG 46")
    drag(30)
    tap("It stands there")
    for (after in listOf(37, 44, 50)) {
        tap("1/8 qt")
        drag(after)
        main()
    }
    main()
}

/** A display note of the unit on the screen, and that the shop was told. */
@OptIn(ExperimentalTestApi::class)
private fun Driver.note(shown: String = "SERVICE 50 H") {
    tap("Display")
    tap("reminder")
    write("As it stands there", shown)
    tap("No")
    main()
    main()
}

@OptIn(ExperimentalTestApi::class)
private fun Driver.endOfDay(pin: String) {
    main()
    tap("None found")
    signs(pin)
}
