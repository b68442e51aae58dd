package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.onNodeWithText
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Signed
import app.sumpbook.ui.desk.Recorded
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertContentEquals
import kotlin.test.assertEquals
import kotlin.test.assertNotNull
import kotlin.test.assertNull

/** The noise of a defect is recorded where the defect is told, heard again, taken away, and goes along with it. */
@OptIn(ExperimentalTestApi::class)
class SoundTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    /** A line of a walk: what holds the compressor, and rattles when it is broken. */
    private class At(val draft: String, val stop: String, val line: String)

    private fun mounts(door: String): At {
        val draft = cab.walk(door)
        fun line(label: String) = cab.phone.stop(draft, label, emptyList(), 0u)?.takeIf { it.label == label }?.lines?.firstOrNull { it.item == "mounts" }
        val stop = (1..40).map { "$it" }.first { line(it) != null }
        return At(draft, stop, line(stop)!!.id)
    }

    private fun SkikoComposeUiTest.stands(words: String) = onNodeWithText(words, substring = true).assertExists()

    private fun SkikoComposeUiTest.gone(words: String) = onNodeWithText(words, substring = true).assertDoesNotExist()

    @Test
    fun `a noise is recorded, heard again and goes with its defect`() = with(cab) {
        val at = mounts("TH-03")
        val phone = HeldUp()
        at(Place.Defect(unit("TH-03"), at.draft, at.stop, at.line), high = 1_600, sounds = phone) {
            find("Sound")
            stands("Recording: 10 seconds left")
            stands("Stand clear of what turns.")
            picture("defect-recording")
            // What ends it is the main thing at the thumb: on a small screen the page below may be scrolled anywhere.
            gone("Keep defect")
            press("Stop here")
            stands("A sound goes with it")
            gone("Recording")
            find("Listen")
            stands("Stop listening")
            assertEquals(1, phone.played.size)
            phone.playing.complete(Unit)
            settled()
            stands("Take the sound away")
            picture("defect-sound")
            turned()
            stands("A sound goes with it")
            find("broken")
            press("Keep defect")
            val sound = assertNotNull(answer(at.draft, at.stop, at.line)?.sound)
            assertContentEquals(phone.played.single(), this@with.phone.sound(sound))
        }
        // Opened again, the sound is there to be heard, and can be taken away.
        at(Place.Defect(unit("TH-03"), at.draft, at.stop, at.line), high = 1_600, sounds = phone) {
            find("Take the sound away")
            onNodeWithText("Sound").assertExists()
            find("loose")
            press("Keep defect")
            assertNull(answer(at.draft, at.stop, at.line)?.sound)
        }
    }

    @Test
    fun `a recording left for another answer is over, and that answer can be kept`() = with(cab) {
        val at = mounts("TH-03")
        at(Place.Defect(unit("TH-03"), at.draft, at.stop, at.line), high = 1_600, sounds = HeldUp()) {
            find("Sound")
            stands("Stop here")
            press("Could not check")
            gone("Stop here")
            onNodeWithText("Keep", substring = true).assertExists()
        }
    }

    @Test
    fun `what is refused is said and the defect is kept without a sound`() = with(cab) {
        val at = mounts("TH-03")
        val phone = HeldUp(Recorded.NotAllowed)
        at(Place.Defect(unit("TH-03"), at.draft, at.stop, at.line), high = 1_600, sounds = phone) {
            find("Sound")
            stands("This app is not allowed to use the microphone.")
            picture("defect-sound-not-allowed")
            phone.hears = Recorded.NoMicrophone
            find("Sound")
            press("Stop here")
            stands("The microphone gave no sound")
            phone.hears = Recorded.Sound(whine(12))
            find("Sound")
            gone("The microphone gave no sound")
            press("Stop here")
            stands("This sound is longer than 10 seconds.")
            phone.hears = Recorded.Sound(byteArrayOf(1, 2, 3))
            find("Sound")
            press("Stop here")
            stands("This is no sound that can be kept")
            find("broken")
            press("Keep defect")
            assertEquals(AnswerKind.DEFECT, answer(at.draft, at.stop, at.line)?.answer)
            assertNull(answer(at.draft, at.stop, at.line)?.sound)
        }
    }

    @Test
    fun `without a microphone a file is chosen, and a desk without either offers nothing`() = with(cab) {
        val at = mounts("TH-03")
        val desk = HeldUp(microphone = false).apply { chosen = whine(3) }
        at(Place.Defect(unit("TH-03"), at.draft, at.stop, at.line), way = OwnWay("es"), high = 1_600, sounds = desk) {
            find("Elegir un sonido")
            stands("Lleva un sonido")
            find("Quitar el sonido")
        }
        at(Place.Defect(unit("TH-03"), at.draft, at.stop, at.line), high = 1_600, sounds = HeldUp(microphone = false, files = false)) {
            gone("Sound")
            gone("Choose a sound")
        }
    }

    @Test
    fun `what the last one heard is heard by the next`() = with(cab) {
        val at = mounts("TH-03")
        val told = phone.keepSound(whine(1))
        phone.answerLine(at.draft, Answer("mounts", null, AnswerKind.DEFECT, word = "broken", sound = told))
        phone.signPreTrip(at.draft, Signed(pinGiven = false), true, null)
        assertEquals(listOf(true), phone.whereItIs(1u).days.flatMap { it.rows }.flatMap { it.photos }.map { it.sound })
        val next = HeldUp()
        at(Place.LastReport(unit("TH-03"), ""), high = 2_400, sounds = next) {
            stands("Sound of the defect")
            find("Listen")
            assertContentEquals(phone.sound(told), next.played.single())
            find("Stop listening")
            stands("Listen")
            onNode(hasText("Take the sound away")).assertDoesNotExist()
        }
    }
}
