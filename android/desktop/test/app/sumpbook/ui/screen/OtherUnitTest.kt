package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.onNodeWithText
import app.sumpbook.core.Aside
import app.sumpbook.core.Meter
import app.sumpbook.core.PhoneException
import app.sumpbook.core.Said
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFailsWith
import kotlin.test.assertIs

/** This belongs to another unit: void here, anew there, both seen. */
@OptIn(ExperimentalTestApi::class)
class OtherUnitTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    private fun figure(door: String) = cab.phone.unit(cab.unit(door), cab.person()).reading?.figure

    @Test
    fun `pick the entry, pick the unit, sign`() = with(cab) {
        val wrong = phone.giveHours(Said(unit("TH-02"), person()), Meter.COMPRESSOR, 28_661, false)
        at(Place.Unit(unit("TH-02")), high = 2_400) {
            press("More")
            find("This belongs to another unit")
            picture("other-unit-pick")
            press("2,866.1 h")
            find("TH-01")
            onNodeWithText("Void on TH-02, anew on TH-01. Both are still seen, here and at the shop.").assertExists()
            picture("other-unit-sign")
            press("Sign without PIN")
            onNodeWithText("It stands on TH-01 now. Here it is void and still seen.").assertExists()
            assertEquals(28_661L to null, figure("TH-01") to figure("TH-02"))
            assertEquals(listOf("hour-reading", "hour-reading", "other-unit"), kinds().sorted())
            val told = phone.whereItIs(0u).days.flatMap { it.rows }.first { it.id == wrong }
            assertEquals("void", assertIs<Aside.Judged>(told.aside).v1)
        }
    }

    @Test
    fun `nothing to move says so, in Spanish`() = with(cab) {
        at(Place.OtherUnit(unit("TH-02")), OwnWay("es")) {
            onNodeWithText("Nada de lo que dijiste de esta unidad en los últimos días se puede mover.").assertExists()
        }
    }

    @Test
    fun `what another person said is not one's own to move, and tried again nothing moves twice`() = with(cab) {
        val hers = phone.giveHours(Said(unit("TH-02"), person("Bettina Quaye")), Meter.COMPRESSOR, 12_110, false)
        assertFailsWith<PhoneException.Entry> { phone.belongsTo(Said(unit("TH-02"), person()), hers, unit("TH-01")) }
        val mine = phone.giveHours(Said(unit("TH-02"), person()), Meter.COMPRESSOR, 12_111, false)
        assertFailsWith<PhoneException.Entry> { phone.belongsTo(Said(unit("TH-02"), person()), mine, unit("TH-02")) }
        val said = Said(unit("TH-02"), person(), id = phone.newId())
        assertEquals(phone.belongsTo(said, mine, unit("TH-01")), phone.belongsTo(said, mine, unit("TH-01")))
        assertEquals(1, kinds().count { it == "other-unit" })
    }
}
