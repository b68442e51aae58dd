package app.sumpbook.ui.screen

import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.assertIsNotDisplayed
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performSemanticsAction
import androidx.compose.ui.test.performTextInput
import app.sumpbook.core.Fluid
import app.sumpbook.core.LockState
import app.sumpbook.core.OilFamily
import app.sumpbook.ui.control.assertTargets
import app.sumpbook.ui.control.assertText
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs

@OptIn(ExperimentalTestApi::class)
class TopUpTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    private fun SkikoComposeUiTest.drag(percent: Int) = with(cab) {
        onNodeWithContentDescription("Sight glass").performScrollTo().performSemanticsAction(SemanticsActions.SetProgress) { it(percent.toFloat()) }
        settled()
    }

    @Test
    fun `the gate, the drum, one small pour, the cap`() = with(cab) {
        at(Place.TopUp(unit("TH-01"), "")) {
            assertIs<Place.TopUp>(back.top)
            picture("top-up-empty")
            onNodeWithText("The gauge at 0 and blow-down silent, both, before the cap.").assertExists()
            onNodeWithText("Add a pour").assertIsNotEnabled()
            press("Gauge reads 0")
            onNodeWithText("Blow-down has not ended.").assertExists()
            press("Blow-down ended, silent")
            onNodeWithText("Read the drum's label first.").assertExists()
            find("The drum says mineral ISO VG 46")
            drag(30)
            find("It stands there")
            find("1/8 qt")
            picture("top-up-pour")
            drag(52)
            picture("top-up-after")
            press("Add a pour")
            picture("top-up-finish")
            press("Cap tight: finish")
            val poured = phone.unit(unit("TH-01"), person()).pours.first()
            assertEquals(listOf(125L to "qt"), poured.volumes.map { it.digits to it.unit })
            assertEquals("Percent(v1=30)" to "Percent(v1=52)", poured.before.toString() to poured.after.toString())
            assertIs<Place.Unit>(back.top)
            assertEquals(emptyList(), phone.drafts().drafts.filter { it.kind == "top-up" })
        }
    }

    @Test
    fun `hot oil stands higher - its temperature is offered, and kept with the top-up`() = with(cab) {
        at(Place.TopUp(unit("TH-01"), "")) {
            press("Gauge reads 0")
            press("Blow-down ended, silent")
            find("The drum says mineral ISO VG 46")
            drag(30)
            find("It stands there")
            find("hot")
            find("Oil temperature in the receiver")
            for (digit in "176") find(digit.toString())
            press("Take 176 °F")
            onNodeWithText("176 °F").performScrollTo().assertExists()
            picture("top-up-hot")
            find("1/8 qt")
            drag(52)
            press("Add a pour")
            press("Cap tight: finish")
            val kept = checkNotNull(phone.unit(unit("TH-01"), person()).oil.last)
            assertEquals(app.sumpbook.core.Warmth.HOT, kept.warmth)
            assertEquals(app.sumpbook.core.Figure(176, 0u, "degF"), kept.oilTemperature)
        }
    }

    @Test
    fun `another family is not poured - and what was poured already is told, and locks the air`() = with(cab) {
        at(Place.TopUp(unit("TH-01"), "")) {
            press("Gauge reads 0")
            press("Blow-down ended, silent")
            find("It says something else")
            find("polyglycol")
            picture("top-up-other-oil")
            onNodeWithText("Another oil family. Do not pour; call.").assertExists()
            onNodeWithText("These two thicken to a gel when they meet.").assertExists()
            onNodeWithText("Add a pour").assertIsNotEnabled()
            press("Already poured")
            find("1/4 qt")
            drag(50)
            press("Keep: already poured")
            press("Cap tight: finish")
            val unit = phone.unit(unit("TH-01"), person())
            assertEquals(OilFamily.POLYGLYCOL, unit.pours.first().family)
            assertEquals(LockState.LOCKED, unit.roadAir.air.state)
        }
    }

    @Test
    fun `on a narrow phone both oils are seen when they may not meet`() = with(cab) {
        at(Place.TopUp(unit("TH-01"), ""), wide = 320, high = 616) {
            find("It says something else")
            find("polyglycol")
            for (said in listOf("Another oil family. Do not pour; call.", "In the unit", "In the drum")) onNodeWithText(said).assertIsDisplayed()
        }
    }

    @Test
    fun `in the largest text the warning is what is seen, and a press too early leads to the reason`() = with(cab) {
        at(Place.TopUp(unit("TH-01"), ""), high = 776, text = 2f) {
            find("It says something else")
            find("polyglycol")
            onNodeWithText("Another oil family. Do not pour; call.").assertIsDisplayed()
            onNodeWithText("In the unit").assertIsDisplayed()
            onNodeWithText("In the drum").assertIsDisplayed()
            val why = onNodeWithText("The gauge at 0 and blow-down silent, both, before the cap.")
            why.assertIsNotDisplayed()
            press("Add a pour")
            why.assertIsDisplayed()
        }
    }

    @Test
    fun `not poured leaves nothing behind, another fluid has no gate`() = with(cab) {
        at(Place.TopUp(unit("TH-01"), "")) {
            press("Other fluid")
            find("Washer fluid")
            assertEquals(1, phone.drafts().drafts.count { it.kind == "top-up" })
            find("other")
            for (digit in "150") find(digit.toString())
            find("That much")
            press("Add a pour")
            press("That is all: finish")
            assertEquals(Fluid.WASHER_FLUID, phone.unit(unit("TH-01"), person()).pours.first().fluid)
        }
        at(Place.TopUp(unit("TH-01"), "")) {
            press("Not poured")
            assertEquals(emptyList(), phone.drafts().drafts)
        }
    }

    @Test
    fun `nothing is cut or too small, narrow and large, in Spanish`() = with(cab) {
        at(Place.TopUp(unit("TH-01"), ""), OwnWay("es", metric = true), wide = 320, high = 1_600, text = 2f) {
            assertTargets("320")
            assertText("320")
            find("Dice otra cosa")
            assertText("320, another drum")
            onNodeWithContentDescription("Grado en la etiqueta").performTextInput("ISO VG 32")
            settled()
            find("Ese es el grado")
            picture("top-up-es-320")
            onNodeWithText("Misma familia, otro grado. No eches; llama.").assertDoesNotExist()
        }
    }
}
