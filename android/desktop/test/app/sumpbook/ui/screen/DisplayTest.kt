package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performTextInput
import app.sumpbook.core.NoteKind
import app.sumpbook.core.Said
import app.sumpbook.core.ShownNote
import app.sumpbook.core.StepSaid
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs
import kotlin.test.assertTrue

@OptIn(ExperimentalTestApi::class)
class DisplayTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    @Test
    fun `told is told by mouth while the note is only on this phone`() = with(cab) {
        val note = phone.keepNote(Said(unit("TH-05"), person()), ShownNote(NoteKind.WARNING, "OIL TEMP", false))
        val here = "\"Told\" means that you told a person; the note itself is on this phone."
        at(Place.Unit(unit("TH-05"))) {
            runOnIdle { back.go(Place.Display(unit("TH-05"), note)) }
            settled()
            onNodeWithText(here).assertDoesNotExist()
            press("Told the shop")
            assertIs<Place.Unit>(back.top)
            onNodeWithText(here).assertExists()
            picture("display-told-here")
        }
        at(Place.Display(unit("TH-05"), note)) { onNodeWithText(here).assertExists() }
        at(Place.Display(unit("TH-05"), note), OwnWay("es")) { onNodeWithText("el aviso mismo está en este teléfono", substring = true).assertExists() }
    }

    @Test
    fun `what it shows is written down, then who was told`() = with(cab) {
        at(Place.Display(unit("TH-05"), "")) {
            onNodeWithText("Say what it is first.").assertExists()
            press("reminder")
            onNodeWithText("Keep what it shows").assertIsNotEnabled()
            onNodeWithContentDescription("As it stands there").performTextInput("SERVICE 50 h")
            settled()
            find("No")
            picture("display-new")
            press("Keep what it shows")
            assertIs<Place.Display>(back.top)
            onNodeWithText("reminder: SERVICE 50 h").assertExists()
            picture("display-note")
            press("Told the shop")
            val note = phone.display(unit("TH-05"), null).open.single()
            assertEquals(NoteKind.REMINDER to "SERVICE 50 h", note.what to note.asShown)
            assertEquals(true to false, note.first?.toldShop to note.stoppedByItself)
        }
    }

    @Test
    fun `a stop by itself asks for its cause, and the restart after it is no finding`() = with(cab) {
        at(Place.Display(unit("TH-05"), "")) {
            press("warning")
            onNodeWithContentDescription("As it stands there").performTextInput("HIGH TEMP")
            settled()
            find("Yes")
            onNodeWithContentDescription("Cause, when it is known").performTextInput("cooler door fell shut")
            settled()
            picture("display-cause")
            press("Keep what it shows")
            assertIs<Place.Display>(back.top)
        }
        val start = phone.procedure(unit("TH-05"), "start", person())
        phone.keepSteps(Said(unit("TH-05"), person()), "start", start.steps.map { StepSaid(it.id, "2026-11-16T09:00:00-07:00") }, null)
        val open = phone.lastReport(unit("TH-05"), emptyList()).defects.map { it.item }
        assertTrue("oil-look" in open && "step-mid-watch" !in open, open.toString())
    }

    @Test
    fun `a note another wrote is answered by one tap, and is gone by one`() = with(cab) {
        val note = phone.keepNote(Said(unit("TH-05"), person("Gil Sandoval")), ShownNote(NoteKind.WARNING, "FILTER"))
        at(Place.Display(unit("TH-05"), "")) {
            find("warning: FILTER")
            press("Only seen")
            assertEquals(false, phone.display(unit("TH-05"), note).note?.first?.toldShop)
            back.go(Place.Display(unit("TH-05"), note))
            settled()
            press("Gone again")
            assertEquals(emptyList(), phone.display(unit("TH-05"), null).open.filter { it.asShown == "FILTER" && it.id == note })
        }
    }
}
