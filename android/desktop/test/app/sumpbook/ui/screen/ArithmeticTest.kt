package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.hasText
import app.sumpbook.core.Fluid
import app.sumpbook.core.LeftHours
import app.sumpbook.core.Meter
import app.sumpbook.core.NoteKind
import app.sumpbook.core.OilFamily
import app.sumpbook.core.Said
import app.sumpbook.core.ShownNote
import app.sumpbook.core.SiteDust
import app.sumpbook.core.TopUpSaid
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import app.sumpbook.ui.words.hours
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs
import kotlin.test.assertNotNull
import kotlin.test.assertTrue

/** Hours, oil and dust as a driver reads them; figures worked by rule. */
@OptIn(ExperimentalTestApi::class)
class ArithmeticTest {
    private val cab = Cab {
        says("register", example("programme"))
        register(WEIGHTED)
    }

    @AfterTest
    fun clear() = cab.close()

    private fun SkikoComposeUiTest.says(part: String) = assertEquals(1, onAllNodes(hasText(part, substring = true)).fetchSemanticsNodes().size, part)

    private fun pour(daysAgo: Long, hours: String, qt: String) = cab.says(
        daysAgo,
        "TH-01",
        "top-up",
        """{"fluid":"compressor-oil","family":"mineral","grade":"ISO VG 46","gauge-zero":true,"blow-down-silent":true,""" +
            """"pours":[{"volume":{"value":"$qt","unit":"qt"}}],"after":{"percent":50},"warmth":"cold",""" +
            """"stopped":{"minutes":30,"how":"timed"},"cap-tight":true}""",
        hours,
    )

    /** Each pour brings it back to the middle: 1.26 mL/h, then 3.15. */
    private fun drinks() {
        pour(90, "2440.0", "0.05")
        pour(80, "2500.0", "0.08")
        pour(70, "2560.0", "0.08")
        pour(60, "2620.0", "0.20")
        pour(50, "2680.0", "0.20")
    }

    private fun read(daysAgo: Long, door: String, figure: String) =
        cab.says(daysAgo, door, "hour-reading", """{"meter":"compressor","figure":"$figure","how":"asked","kept-when-asked":false}""")

    @Test
    fun `a fill that begins to drink says by how much, since when, and what leaves with the air`() = with(cab) {
        drinks()
        at(Place.Unit(unit("TH-01")), high = 4_000) {
            picture("arithmetic-oil")
            says("Using 2.5x its usual since")
            says("Look at separator, scavenge line, leaks.")
            says("used 0.20 qt in 60.0 h: about 3.15 mL/h, between")
            says("usual of this fill: about 1.26 mL/h")
            says("over the limit of 1.83 mL/h")
            val air = assertNotNull(phone.unit(unit("TH-01"), person()).oilUse?.carryOver)
            says("at least ${air.mgM3Tenths / 10}.${air.mgM3Tenths % 10} mg/m3 of oil in the air, ISO 8573-1 oil class")
        }
    }

    @Test
    fun `whoever tops up reads the same, in Spanish and in millilitres`() = with(cab) {
        drinks()
        val draft = phone.beginTopUp(unit("TH-01"), person(), Fluid.COMPRESSOR_OIL)
        phone.sayTopUp(draft, TopUpSaid(family = OilFamily.MINERAL, grade = "ISO VG 46", gaugeZero = true, blowDownSilent = true))
        at(Place.TopUp(unit("TH-01"), draft), OwnWay("es", metric = true), high = 4_000) {
            says("Usa 2.5 veces lo normal desde")
            says("usó 189 mL en 60.0 h: unos 3.15 mL/h")
        }
    }

    @Test
    fun `a steady pace says the likely day with its bounds, and no pace says so`() = with(cab) {
        says(200, "TH-01", "service-done", """{"tasks":["oil-and-filters"]}""", "2418.0")
        for (n in 0L..7L) read(7 - n, "TH-01", "${2847 + 5 * n}.4")
        at(Place.Unit(unit("TH-01")), high = 4_000) {
            picture("arithmetic-forecast")
            says("about 5.0 h a day")
            val known = phone.unit(unit("TH-01"), person()).tasks.count { it.forecast != null }
            assertTrue(known > 0)
            assertEquals(known, onAllNodes(hasText("At this pace likely", substring = true) and hasText(", between ", substring = true)).fetchSemanticsNodes().size)
        }
        at(Place.Unit(unit("TH-03")), high = 4_000) {
            assertEquals(0, onAllNodes(hasText("At this pace likely", substring = true)).fetchSemanticsNodes().size)
        }
    }

    @Test
    fun `dusty hours weigh, and what that is on this meter stands beside`() = with(cab) {
        says(1, "TH-09", "service-done", """{"tasks":["oil-and-filters"]}""", "100.0")
        read(1, "TH-09", "100.0")
        phone.keepSite(Said(unit("TH-09"), person()), SiteDust.DUSTY)
        read(0, "TH-09", "104.0")
        at(Place.Unit(unit("TH-09")), high = 4_000) {
            picture("arithmetic-weighted")
            // 4.0 h at 1.5 are 6.0: 494.0 weighted hours are left, 329.3 of the meter, to 433.3.
            says("an hour counts 1.50 now, 494.0 weighted h left: about 329.3 h on the meter as it runs now, at 433.3")
        }
    }

    @Test
    fun `hours without a meter are counted, with their bounds at the task`() = with(cab) {
        says(40, "TH-04", "service-done", """{"tasks":["oil-and-filters"]}""", "200.0")
        says(3, "TH-04", "start-air", "{}")
        says(2, "TH-04", "start-air", "{}")
        says(1, "TH-04", "stop-air", """{"blew-down":true}""")
        val task = phone.unit(unit("TH-04"), person()).tasks.first { it.id == "oil-and-filters" }
        val (least, most) = task.hoursLeft to task.hoursLeftAtMost
        assertIs<LeftHours.Left>(least)
        assertIs<LeftHours.Left>(most)
        at(Place.Unit(unit("TH-04")), high = 4_000) {
            picture("arithmetic-counted")
            says("counted: at least ${hours(least.v1)} h left, at most ${hours(most.v1)} h")
        }
    }

    @Test
    fun `figures that dispute stand both there, with which one is used, and other meters beside`() = with(cab) {
        read(3, "TH-02", "1211.0")
        read(2, "TH-02", "1200.0")
        phone.giveHours(Said(unit("TH-02"), person()), Meter.ENGINE, 44_102, false)
        phone.keepNote(Said(unit("TH-02"), person()), ShownNote(NoteKind.WARNING, "OIL COLD", false))
        at(Place.Unit(unit("TH-02")), high = 4_000) {
            picture("arithmetic-unsettled")
            says("It runs backwards. 1,211.0 / 1,200.0")
            says("engine hours: 4,410.2 h")
            says("1 display note is open")
        }
    }

    private companion object {
        const val WEIGHTED = """{"register":"unit","door":"TH-09","features":{"switched":["hour-meter","diesel"],"valves":["hose"]},"in-service":"2026-01-05","in-service-hours":"0.0","profile":{"delivery":{"value":"100","unit":"cfm"},"oil-family":"mineral","weights":[["dusty",150],["very-dusty",200]]}}"""
    }
}
