package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.onAllNodesWithText
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import app.sumpbook.ui.control.assertTargets
import app.sumpbook.ui.control.assertText
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs

/** A row that is set aside opens: the whole reason, what it says, what to do. */
@OptIn(ExperimentalTestApi::class)
class SetAsideTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    private fun Cab.cannotBe() {
        says(1, "TH-03", "hour-reading", """{"meter":"compressor","figure":"738.4","how":"asked","kept-when-asked":false}""")
        says(0, "TH-03", "hour-reading", """{"meter":"compressor","figure":"7421.0","how":"asked","kept-when-asked":true}""")
    }

    @Test
    fun `from the list to the reason, to the meter`() = with(cab) {
        cannotBe()
        at(Place.WhereItIs()) {
            picture("where-aside")
            onAllNodesWithText("hours the meter cannot show", substring = true).onFirst().performScrollTo().performClick()
            settled()
            assertIs<Place.SetAside>(back.top)
            picture("set-aside-reading")
            onNodeWithText("Its meter cannot have shown these hours. They are left out; the rest of it counts.").assertIsDisplayed()
            onNodeWithText("The meter could show at most", substring = true).assertIsDisplayed()
            onNodeWithText("Read the meter again and type what it shows.", substring = true).assertIsDisplayed()
            press("Hours")
            assertEquals(Place.Hours(unit("TH-03")), back.top)
        }
    }

    @Test
    fun `nothing is cut or too small, narrow and large, in Spanish`() = with(cab) {
        cannotBe()
        val id = phone.whereItIs(1u).days.flatMap { it.rows }.first { it.aside != null }.id
        at(Place.SetAside(id), OwnWay("es"), wide = 320, high = 616, text = 2f) {
            picture("set-aside-es-320")
            assertTargets("320")
            assertText("320")
        }
    }
}
