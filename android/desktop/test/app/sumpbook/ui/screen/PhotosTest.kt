package app.sumpbook.ui.screen

import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.isEnabled
import androidx.compose.ui.test.onNodeWithContentDescription
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performSemanticsAction
import androidx.compose.ui.test.performTextInput
import app.sumpbook.core.PhoneClock
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import java.time.Instant
import java.time.temporal.ChronoUnit
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** Photos of the glass and of the display go with what was told. */
@OptIn(ExperimentalTestApi::class)
class PhotosTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    /** How many photos each kept entry names, as the phone lists them. */
    private fun photos(kind: String) = cab.phone.whereItIs(1u).days.flatMap { it.rows }.filter { it.kind == kind }.map { it.photos.size }

    @Test
    fun `a level takes its photo along`() = with(cab) {
        at(Place.Glass(unit("TH-02")), pictures = Camera(24)) {
            onNodeWithContentDescription("Sight glass").performScrollTo().performSemanticsAction(SemanticsActions.SetProgress) { it(50f) }
            settled()
            find("Yes, at least 5 minutes")
            find("Take a photo")
            onNodeWithText("1 photo goes with it").assertExists()
            picture("glass-photo")
            press("Keep 50 %")
            assertEquals(listOf(1), photos("level-check"))
        }
    }

    @Test
    fun `on a drawn day the walk asks for a photo of the glass, and takes it along`() {
        var days = 0L
        val clock = object : PhoneClock {
            override fun now(): String = Instant.now().plus(days, ChronoUnit.DAYS).toString()
        }
        Cab(clock).use { other ->
            with(other) {
                val unit = unit("TH-01")
                // About one day in ten is drawn, the same one on every phone.
                val drawn = (0L..60L).filter { days = it; phone.glass(unit, null, null).photoAsked }
                assertTrue(drawn.size in 1..20, "$drawn")
                days = drawn.first()
                val draft = walk("TH-01")
                val label = stop(draft, "glass")
                at(Place.Stop(unit, draft, label), high = 1_300, pictures = Camera(27)) {
                    onNodeWithText("Today a photo of the glass is asked", substring = true).assertExists()
                    find("Take a photo")
                    onNodeWithContentDescription("Sight glass").performSemanticsAction(SemanticsActions.SetProgress) { it(48f) }
                    settled()
                    picture("glass-drawn-day")
                    waitUntil(timeoutMillis = 5_000) { onAllNodes(hasText("48 %, other 2 OK") and isEnabled()).fetchSemanticsNodes().isNotEmpty() }
                    press("48 %, other 2 OK")
                    assertEquals(1u, answer(draft, label, "oil-level")?.photos)
                }
                days = (0L..60L).first { it !in drawn }
                at(Place.Stop(unit, walk("TH-01"), label), high = 1_300, pictures = Camera(28)) {
                    onNodeWithText("Take a photo").assertDoesNotExist()
                }
            }
        }
    }

    @Test
    fun `a display note takes its photo along`() = with(cab) {
        at(Place.Display(unit("TH-05"), ""), pictures = Camera(25)) {
            press("fault")
            onNodeWithContentDescription("As it stands there").performTextInput("HIGH TEMP")
            settled()
            find("Take a photo")
            onNodeWithText("1 photo goes with it").assertExists()
            picture("display-photo")
            press("Keep what it shows")
            assertEquals(listOf(1), photos("display-note"))
        }
    }
}
