package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.isEnabled
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performTextInput
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Severity
import app.sumpbook.core.Signed
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs

@OptIn(ExperimentalTestApi::class)
class DefectTest {
    private val cab = Cab()
    private val draft = cab.walk("TH-03")
    private val stop = cab.stop(draft, "cab-off")
    private fun mirrors() = Place.Defect(cab.unit("TH-03"), draft, stop, "mirrors")

    @AfterTest
    fun clear() = cab.close()

    @Test
    fun `a word, a side, keep - and what it locks stands there before`() = with(cab) {
        at(mirrors()) {
            picture("defect-empty")
            onNodeWithText("Keep defect").assertIsNotEnabled()
            press("no view")
            onNodeWithText("This locks ROAD until the shop certifies it.").assertExists()
            press("right")
            picture("defect")
            press("Keep defect")
            val kept = checkNotNull(answer(draft, stop, "mirrors"))
            assertEquals(AnswerKind.DEFECT to "no-view", kept.answer to kept.word)
            assertEquals(null to Severity.ROAD, kept.words to kept.severity)
            assertEquals("right", phone.signing(draft, null).defects.single().place, "the side is its place")
            assertIs<Place.Today>(back.top)
        }
    }

    @Test
    fun `another word wants words, and a lock may be raised`() = with(cab) {
        at(mirrors()) {
            press("other")
            onNodeWithText("Say it in your own words first.").assertExists()
            onNodeWithContentDescription("In your own words").performTextInput("bracket rubs the door")
            settled()
            press("Lock more")
            find("ROAD and AIR")
            press("Keep defect")
            val kept = checkNotNull(answer(draft, stop, "mirrors"))
            assertEquals("bracket rubs the door" to Severity.ROAD_AND_AIR, kept.words to kept.severity)
        }
    }

    @Test
    fun `could not check is one tap further and gives its reason`() = with(cab) {
        at(mirrors()) {
            press("Could not check")
            onNodeWithText("Give the reason first.").assertExists()
            onNodeWithContentDescription("Why?").performTextInput("ice")
            settled()
            press("Keep: could not check")
            val kept = checkNotNull(answer(draft, stop, "mirrors"))
            assertEquals(AnswerKind.COULD_NOT_CHECK to "ice", kept.answer to kept.words)
        }
    }

    @Test
    fun `a drop over the limit is asked for as a defect, with its figure and the rule`() = with(cab) {
        val leak = stop(draft, "leak-released")
        at(Place.Stop(unit("TH-03"), draft, leak)) {
            press("Start 60 s")
            find("5")
            settled()
            assertIs<Place.Defect>(back.top)
            assertEquals(null, answer(draft, leak, "air-leak-released"), "nothing is kept as OK")
            onNodeWithText("5 psi breaks the rule", substring = true).assertExists()
            picture("defect-over-limit")
            press("over the limit")
            press("Keep defect")
            val kept = checkNotNull(answer(draft, leak, "air-leak-released"))
            assertEquals(AnswerKind.DEFECT to "over-limit", kept.answer to kept.word)
            assertEquals(5L, kept.figures.single().figure.digits)
        }
    }

    @Test
    fun `a line with a defect leaves its group, and the rest is answered by one tap`() = with(cab) {
        at(Place.Stop(unit("TH-03"), draft, stop), high = 1_300) {
            find("Mirrors")
            press("cracked")
            press("Keep defect")
            waitUntil(timeoutMillis = 5_000) { onAllNodes(hasText("Other 6 OK") and isEnabled()).fetchSemanticsNodes().isNotEmpty() }
            onNodeWithText("cracked").assertExists()
            picture("defect-left-group")
            press("Other 6 OK")
            assertEquals(AnswerKind.DEFECT to null, answer(draft, stop, "mirrors")?.let { it.answer to it.together })
            assertEquals(AnswerKind.OK, answer(draft, stop, "papers")?.answer)
            back.back()
            settled()
            onNodeWithText("6 answered together after", substring = true).assertExists()
            picture("defect-group-after")
        }
    }

    @Test
    fun `a defect kept by a slip is taken back, and the line is open again`() = with(cab) {
        phone.answerLine(draft, Answer("mirrors", null, AnswerKind.DEFECT, word = "cracked"))
        at(mirrors()) {
            picture("defect-take-back")
            press("Take it back")
            assertEquals(null, answer(draft, stop, "mirrors"))
            assertIs<Place.Today>(back.top)
        }
        at(mirrors()) { onNodeWithText("Take it back").assertDoesNotExist() }
    }

    @Test
    fun `a line somebody else answered says whose, and is looked at again`() = with(cab) {
        val hers = phone.beginPreTrip(unit("TH-05"), person("Bettina Quaye"), null)
        phone.answerLine(hers, Answer("mirrors", null, AnswerKind.DEFECT, word = "cracked"))
        val walk = Regex(""""walk":"([^"]+)"""").find(phone.draftJson(hers))!!.groupValues[1]
        phone.signPreTrip(hers, Signed(pinGiven = false), true, null)
        val mine = phone.beginPreTrip(unit("TH-05"), person(), walk)
        val there = stop(mine, "cab-off")
        at(Place.Defect(unit("TH-05"), mine, there, "mirrors")) {
            onNodeWithText("Bettina Quaye", substring = true).assertExists()
            onNodeWithText("Take it back").assertDoesNotExist()
            picture("defect-look-again")
            press("Looked again: OK")
            val kept = checkNotNull(answer(mine, there, "mirrors"))
            assertEquals(AnswerKind.OK to null, kept.answer to kept.at, "an answer of one's own")
        }
    }

    @Test
    fun `the same in Spanish`() = with(cab) {
        at(mirrors(), OwnWay("es")) {
            onNodeWithText("¿Qué tiene?").assertExists()
            onNodeWithText("Primero di qué tiene.").assertExists()
            picture("defect-es")
        }
    }
}
