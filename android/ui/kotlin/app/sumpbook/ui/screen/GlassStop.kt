package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.pluralStringResource
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.DisabledReason
import app.sumpbook.core.MainAct
import app.sumpbook.core.StopNow
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.LocalPictures
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.seenAs
import app.sumpbook.ui.place.Place
import kotlinx.coroutines.launch

/** The stop at the glass: the level is dragged, and one tap keeps it together with the lines beside it. */
@Composable
fun GlassStop(open: OpenStop) {
    val level = open.view.lines.firstOrNull { it.row.figure?.unit == "%" }
    val line = level?.takeIf { it.row.answer == null }
    var given by rememberSaveable(stateSaver = GlassGiven.Saver) { mutableStateOf(GlassGiven()) }
    val shown by seen(open.unit, given) { glassView(open.unit, given.glass, given.stopped) }
    val view = (shown as? Told.Got)?.it
    var photo by rememberSaveable { mutableStateOf<String?>(null) }
    // On a short walk the first driver's level stands until another one is given.
    val asShown = open.view.record.asShown?.takeIf { open.view.record.main.act is MainAct.StillAsShown && given.glass == null }
    StopFrame(
        open,
        main = { if (line == null || view == null || asShown != null) MainOfStop(open) else GlassMain(open, line, view, given, photo) },
        secondary = line?.let { { SecondaryButton(stringResource(R.string.glass_other)) { open.defect(it) } } },
    ) { hints ->
        if (line != null && view != null) {
            // A walk keeps no waiting time: only that it runs must be answered here.
            val runs = view.record.stop is StopNow.Running
            GlassStrips(view, wait = runs)
            // It stays while another level is dragged: nothing may move under the thumb.
            open.view.record.asShown?.let { Strip(stringResource(R.string.glass_as_shown, it.toInt()), small = true) }
            // The glass is this line: it counts as seen with it.
            Column(Modifier.seenAs(line.row.id, open.rows), Arrangement.spacedBy(8.dp)) { GlassPart(view, given, asks = runs) { given = it } }
            // Not among the fixed buttons: there it would take the steps out of the frame.
            if (view.record.low) SecondaryButton(stringResource(R.string.top_up), Modifier.fillMaxWidth()) { open.back.go(Place.TopUp(open.unit, "")) }
            if (view.record.photoAsked && asShown == null) PhotoOfTheDay(view, photo) { photo = it }
        } else {
            level?.let { LineOf(it, open, hints) }
        }
        open.view.lines.filter { it !== level }.forEach { LineOf(it, open, hints) }
    }
}

/** On a drawn day a photo of the glass is asked; one that is not taken holds nothing up. */
@Composable
fun PhotoOfTheDay(view: GlassView, photo: String?, change: (String?) -> Unit) {
    if (LocalPictures.current == null) return
    Strip(stringResource(R.string.glass_photo_asked, view.dayNumber), small = true)
    OnePhoto(photo, change)
}

@Composable
private fun GlassMain(open: OpenStop, line: LineWords, view: GlassView, given: GlassGiven, photo: String?) {
    val scope = rememberCoroutineScope()
    val others = open.view.record.left.toInt() - 1
    val why = open.view.record.main.whyNot
    val more = why is DisabledReason.MoreBelow
    val level = view.given
    val glass = given.glass
    val words = when {
        more -> open.view.whyNot.orEmpty()
        level == null -> stringResource(R.string.glass_keep_none)
        others > 0 -> pluralStringResource(R.plurals.glass_and_rest, others, level, others)
        else -> view.main.orEmpty()
    }
    // The figure that the stop asks for is given by this very tap.
    val whyNot = open.view.whyNot.takeIf { why != null && why !is DisabledReason.FigureMissing } ?: view.whyNot
    MainPress(words, whyNot, whyAbove = !more && why !is DisabledReason.JustOpened, onEarly = if (more) ({ scope.launch { open.rows.turn() } }) else null) {
        if (glass == null) return@MainPress
        open.answerThenGoOn {
            val ms = open.onScreenMs()
            phone.answerLine(open.draft, view.answer(line, glass, ms).copy(photos = listOfNotNull(photo)))
            if (others > 0) phone.okTogether(open.draft, open.view.label, ms)
        }
    }
}
