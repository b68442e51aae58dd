package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import app.sumpbook.core.NoteKind
import app.sumpbook.core.Said
import app.sumpbook.core.ShownNote
import app.sumpbook.ui.control.assertTargets
import app.sumpbook.ui.control.assertText
import app.sumpbook.ui.mark.Theme
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.OwnWay
import kotlin.test.AfterTest
import kotlin.test.Test

/** The screens of a day's work: nothing cut, nothing too small to hit, and a picture of each in every theme. */
@OptIn(ExperimentalTestApi::class)
class DayScreensFitTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    private fun places(): Map<String, Place> = with(cab) {
        val unit = unit("TH-01")
        val draft = walk("TH-01")
        val note = phone.keepNote(Said(unit, person()), ShownNote(NoteKind.FAULT, "HIGH TEMP", true))
        mapOf(
            "defect" to Place.Defect(unit, draft, stop(draft, "cab-off"), "mirrors"),
            "glass-stop" to Place.Stop(unit, draft, stop(draft, "glass")),
            "glass" to Place.Glass(unit), "top-up" to Place.TopUp(unit, ""), "air" to Place.Steps(unit, "start"),
            "display" to Place.Display(unit, ""), "note" to Place.Display(unit, note), "hours" to Place.Hours(unit),
            "end-of-day" to Place.EndOfDay(unit, ""),
        )
    }

    private fun fits(wide: Int, high: Int, text: Float, way: OwnWay, theme: Theme) {
        for ((name, place) in places()) {
            cab.at(place, way, wide, high, text, theme) {
                picture("day-$name-$wide-${way.language}-${if (theme.high) "high-" else ""}${if (theme.dark) "dark" else "light"}")
                assertTargets("$name at $wide x $high, text $text, ${way.language}")
                assertText("$name at $wide x $high, text $text, ${way.language}")
            }
        }
    }

    @Test
    fun `as it was drawn`() = fits(360, 800, 1f, OwnWay(), Theme(dark = true, high = false))

    @Test
    fun `narrow, largest text, Spanish`() = fits(320, 640, 2f, OwnWay("es", metric = true), Theme(dark = false, high = true))

    @Test
    fun `lying, larger text, left thumb`() = fits(800, 360, 1.3f, OwnWay(leftThumb = true), Theme(dark = true, high = true))
}
