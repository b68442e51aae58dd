package app.sumpbook.ui

import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.test.ComposeUiTest
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertHeightIsAtLeast
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.unit.dp
import app.sumpbook.core.TextAsk
import app.sumpbook.core.keysOfCautions
import app.sumpbook.core.text
import app.sumpbook.ui.desk.Light
import app.sumpbook.ui.desk.Settled
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test

/** Settings, and what every one of these screens holds to: the same on each platform. */
@OptIn(ExperimentalTestApi::class)
abstract class HowItIsSet {
    private val yard = HubYard()

    @After
    fun clear() = yard.close()

    private fun ComposeUiTest.press(words: String) = onNodeWithText(words).performScrollTo().performClick()

    @Test
    fun eachChoiceHoldsAtOnce() = onPhone {
        val held = HeldPhone.invited(yard, "Amos Tillery") { Place.Settings() }
        held.show(this)
        shows(held.phone.about().key)
        press("metric")
        press("1.6")
        press("high")
        press("dark")
        press("left")
        press("off")
        press("Español")
        val set = Settled(OwnWay("es", metric = true, leftThumb = true), 1.6f, high = true, light = Light.DARK, buzz = false)
        assertEquals(set, held.settled.value)
        held.phone.shutdown()
    }

    @Test
    fun everythingThatIsPressedIsLargeEnoughInTheWorstCase() = onPhone(language = "es", wide = 320, text = 2f) {
        val held = HeldPhone.invited(yard, "Amos Tillery") { Place.Settings() }
        held.settled.value = Settled(OwnWay("es"), text = 2f)
        held.show(this)
        val unit = held.phone.unitAt("TH-01")
        var pressed = 0
        for (place in listOf(Place.Settings(), Place.WhereItIs(), Place.HandOver(), Place.Happened(unit), Place.Roadside(unit))) {
            held.back.goInstead(place)
            waitUntil("$place stands", 20_000) { waitForIdle(); held.desk.underWay.value == 0 && onAllNodes(hasClickAction()).fetchSemanticsNodes().isNotEmpty() }
            picture("${place.line().substringBefore('|')}-es-320-2.0")
            val all = onAllNodes(hasClickAction())
            for (n in all.fetchSemanticsNodes().indices) {
                all[n].assertHeightIsAtLeast(56.dp)
                pressed++
            }
            val disabled = onAllNodes(hasClickAction()).fetchSemanticsNodes().filter { SemanticsProperties.Disabled in it.config }
            assertTrue("$place: what may not be pressed is not taken for a button", disabled.size < 3)
        }
        assertTrue("$pressed", pressed > 15)
        held.phone.shutdown()
    }

    @Test
    fun everyCautionIsThereToBeRead() = onPhone {
        val held = HeldPhone.invited(yard, "Amos Tillery") { Place.Settings() }
        held.show(this)
        shows("Cautions")
        onNodeWithText("Cautions").performClick()
        val all = keysOfCautions().map { text("en", TextAsk(it, emptyMap())) }
        assertTrue("${all.size}", all.size > 40)
        for (caution in all) {
            shows(caution)
            onNodeWithText(caution).performScrollTo().assertIsDisplayed()
        }
        onNodeWithText("Less").performClick()
        shows("Language")
        held.phone.shutdown()
    }

    @Test
    fun eachOfTheseScreensIsDrawnToBeLookedAt() = onPhone {
        val held = HeldPhone.invited(yard, "Amos Tillery") { Place.Settings() }
        held.phone.recordLine("""{"unit":"TH-01","person":"Amos Tillery","kind":"start-air","body":{}}""")
        held.show(this)
        val unit = held.phone.unitAt("TH-01")
        for (dark in listOf(false, true)) {
            held.settled.value = Settled(light = if (dark) Light.DARK else Light.LIGHT, shopNumber = "555-0140")
            for (place in listOf(Place.Settings(), Place.WhereItIs(), Place.HandOver(), Place.Happened(unit), Place.Roadside(unit))) {
                held.back.goInstead(place)
                waitUntil("$place stands", 20_000) { waitForIdle(); held.desk.underWay.value == 0 && onAllNodes(hasClickAction()).fetchSemanticsNodes().isNotEmpty() }
                picture("${place.line().substringBefore('|')}-${if (dark) "dark" else "light"}")
            }
        }
        held.phone.shutdown()
    }
}
