package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.ToldAgain
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.theme.LocalType

/** A defect of the last report and the line of the walk it is told on; no line: the walk has none like it. */
private data class ToldAgainWords(val row: ToldAgain, val title: String)

private fun Reader.toldAgain(unit: String, draft: String): Pair<String, List<ToldAgainWords>> =
    fleet.units.firstOrNull { it.id == unit }?.door.orEmpty() to phone.notWhatISee(draft).map { ToldAgainWords(it, item(it.item, it.place)) }

/** What the report says is not what is seen: which of it, then the form of a defect; what it does not list comes up on the walk. */
@Composable
fun NotWhatISee(unit: String, draft: String) {
    val back = LocalBackStack.current
    val shown by seen(unit, draft) { toldAgain(unit, draft) }
    val (door, defects) = (shown as? Told.Got)?.it ?: ("" to emptyList())
    ScreenFrame(
        header = { DoorHeader(door, stringResource(R.string.not_what_i_see)) { back.back() } },
        strips = { (shown as? Told.Refused)?.let { Strip(sentence(it.why)) } },
        main = { MainPress(stringResource(R.string.to_the_walk)) { back.goInstead(Place.Stop(unit, draft, "")) } },
    ) {
        defects.forEach { defect ->
            val (stop, line) = defect.row.stop to defect.row.line
            if (stop != null && line != null) Line(defect.title) { back.go(Place.Defect(unit, draft, stop, line)) } else Text(defect.title, style = LocalType.current.line)
        }
        Text(stringResource(R.string.not_listed_comes_on_the_walk), style = LocalType.current.text)
    }
}
