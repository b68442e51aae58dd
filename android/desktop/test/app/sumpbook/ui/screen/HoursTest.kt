package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.assertIsNotEnabled
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import app.sumpbook.core.Meter
import app.sumpbook.core.Said
import app.sumpbook.ui.control.assertKeysWhole
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertIs

@OptIn(ExperimentalTestApi::class)
class HoursTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    private fun SkikoComposeUiTest.type(digits: String) = with(cab) { for (digit in digits) find(digit.toString()) }

    private fun reading() = cab.phone.unit(cab.unit("TH-02"), cab.person()).reading

    @Test
    fun `a first figure is given by its digits, the last one the tenth`() = with(cab) {
        at(Place.Hours(unit("TH-02"))) {
            onNodeWithText("First reading").assertExists()
            onNodeWithText("Type the hours").assertIsNotEnabled()
            type("12110")
            press("1,211.0 h")
            assertEquals(12_110L, reading()?.figure)
            assertIs<Place.Today>(back.top)
        }
    }

    @Test
    fun `a figure that cannot be asks, and is kept only when it is said again`() = with(cab) {
        phone.giveHours(Said(unit("TH-02"), person()), Meter.COMPRESSOR, 12_110, false)
        at(Place.Hours(unit("TH-02"))) {
            type("12262")
            picture("hours-asked")
            onNode(hasText("The meter can read at most", substring = true)).assertExists()
            press("Type again")
            onNodeWithText("Type the hours").assertIsNotEnabled()
            type("12000")
            onNodeWithText("It showed 1,211.0 h before, and 1,200.0 h is less.").assertExists()
            press("Yes, it reads 1,200.0 h")
            assertEquals(2, kinds().count { it == "hour-reading" })
            assertEquals(1u, phone.unit(unit("TH-02"), person()).openQuestions)
        }
    }

    @Test
    fun `what cannot be is kept with a photo of the meter`() = with(cab) {
        phone.giveHours(Said(unit("TH-02"), person()), Meter.COMPRESSOR, 12_110, false)
        at(Place.Hours(unit("TH-02")), pictures = Camera(26)) {
            type("74210")
            onNodeWithText("Take a photo of the meter first.").assertExists()
            press("Take a photo")
            picture("hours-photo")
            onNode(hasText("Keep 7,421.0", substring = true)).performClick()
            settled()
            assertEquals(1, phone.whereItIs(0u).days.flatMap { it.rows }.first { it.kind == "hour-reading" && it.photos.isNotEmpty() }.photos.size)
        }
    }

    /** Where the key of this digit begins. */
    private fun SkikoComposeUiTest.topOf(digit: String) = onNodeWithText(digit).fetchSemanticsNode().boundsInRoot.top

    @Test
    fun `no key is cut, and none moves under the thumb while digits come`() = with(cab) {
        phone.giveHours(Said(unit("TH-02"), person()), Meter.COMPRESSOR, 12_110, false)
        for (language in listOf("en", "es")) {
            for (camera in listOf(null, Camera(29))) {
                at(Place.Hours(unit("TH-02")), OwnWay(language), high = 776, pictures = camera) {
                    val where = "hours, $language, ${if (camera == null) "no camera" else "camera"}"
                    assertKeysWhole(where)
                    val top = topOf("1")
                    for (digit in "1212") {
                        onNodeWithText("$digit").performClick()
                        settled()
                        assertKeysWhole(where)
                        assertEquals(top, topOf("1"), "$where: the keys moved")
                    }
                    for (digit in "99") {
                        onNodeWithText("$digit").performClick()
                        settled()
                    }
                    picture("hours-keys-$language-${camera != null}")
                    assertKeysWhole("$where, above what can be")
                    if (camera != null) {
                        onNodeWithText(if (language == "en") "Take a photo" else "Tomar una foto").performClick()
                        settled()
                        picture("hours-keys-$language-taken")
                        assertKeysWhole("$where, with its photo")
                    }
                }
            }
        }
    }

    @Test
    fun `on a narrow phone the keys are whole when a digit is to be mended`() = with(cab) {
        phone.giveHours(Said(unit("TH-02"), person()), Meter.COMPRESSOR, 12_110, false)
        at(Place.Hours(unit("TH-02")), wide = 320, high = 616, pictures = Camera(31)) {
            type("74210")
            onNode(hasText("The meter can read at most", substring = true)).assertExists()
            assertKeysWhole("hours, narrow, above what can be")
        }
    }

    @Test
    fun `in the walk a question stands in the lines' place, and the keys stay`() = with(cab) {
        phone.giveHours(Said(unit("TH-01"), person()), Meter.COMPRESSOR, 28_624, false)
        hasWalked(person())
        for (language in listOf("en", "es")) {
            for (camera in listOf(null, Camera(30))) {
                val draft = walk("TH-01")
                val display = (1..40).map { "$it" }.first { label -> phone.stop(draft, label, emptyList(), 0u)?.lines.orEmpty().any { it.item == "hours" } }
                at(Place.Stop(unit("TH-01"), draft, display), OwnWay(language), high = 776, pictures = camera) {
                    val where = "hours in the walk, $language, ${if (camera == null) "no camera" else "camera"}"
                    picture("hours-walk-$language")
                    assertKeysWhole(where)
                    val top = topOf("1")
                    for (digit in "2863") {
                        onNodeWithText("$digit").performClick()
                        settled()
                        assertEquals(top, topOf("1"), "$where: the keys moved")
                    }
                    picture("hours-walk-asked-$language")
                    for (digit in "99") {
                        onNodeWithText("$digit").performClick()
                        settled()
                    }
                    picture("hours-walk-above-$language-${camera != null}")
                    assertKeysWhole("$where, above what can be")
                }
            }
        }
    }

    @Test
    fun `what would explain a figure stands with the question`() = with(cab) {
        says(3, "TH-02", "hour-reading", """{"meter":"compressor","figure":"1211.0","how":"asked","kept-when-asked":false}""")
        at(Place.Hours(unit("TH-02"))) {
            type("21150")
            onNodeWithText("Typed wrong?", substring = true).assertExists()
            onNodeWithText("It would read 1,215.0.", substring = true).assertExists()
            picture("hours-hints")
        }
    }

    @Test
    fun `another meter is kept apart`() = with(cab) {
        at(Place.Hours(unit("TH-02"))) {
            press("Which meter?")
            find("engine hours")
            type("905")
            press("90.5 h")
            assertEquals(listOf(Meter.ENGINE to 905L), phone.unit(unit("TH-02"), person()).otherMeters.map { it.meter to it.reading?.figure })
            assertEquals(null, reading())
        }
        // It is judged by its own readings.
        at(Place.Hours(unit("TH-02"))) {
            press("Which meter?")
            find("engine hours")
            type("900")
            onNodeWithText("It showed 90.5 h before, and 90.0 h is less.").assertExists()
            press("Yes, it reads 90.0 h")
            assertEquals(listOf(1u), phone.unit(unit("TH-02"), person()).otherMeters.map { it.openQuestions })
        }
    }
}
