package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.MainAct
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.MeterFigure
import app.sumpbook.ui.control.MeterTyped
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.LocalPictures
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.theme.LocalType

/** What would explain a figure that is asked about. */
@Composable
fun Hints(hints: List<String>) {
    if (hints.isEmpty()) return
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp)) { hints.forEach { Text(it, style = LocalType.current.help) } }
}

/**
 * The meter's figure at the end of a day, asked about as everywhere.
 *
 * @param keep takes a figure that fits into the report
 * @param keepAsked keeps one that was asked about as a reading of its own, with the photo where one was taken: what was
 *   asked, and that somebody stood by it, goes with it
 */
@Composable
fun ColumnScope.HoursOfDay(unit: String, last: Pair<String, Long>?, keep: (Long) -> Unit, keepAsked: (Long, String?) -> Unit) {
    var digits by rememberSaveable { mutableStateOf("") }
    var photo by rememberSaveable { mutableStateOf<String?>(null) }
    val typed = MeterTyped(digits)
    val figure = typed.inTenths
    val shown by seen(unit, figure) { hoursView(unit, figure) }
    val view = (shown as? Told.Got)?.it
    // While the core is being asked about a digit the answer to the one before does not stand for it.
    val fresh = view != null && view.record.typed == figure
    val act = view?.record?.main?.act
    val asks = fresh && (act is MainAct.YesItReads || act is MainAct.KeepWithPhoto)
    val wantsPhoto = fresh && act is MainAct.KeepWithPhoto && LocalPictures.current != null
    if (asks) {
        view.asked?.let { Strip(it, heavy = true) }
        Hints(view.hints)
    }
    val hours = stringResource(R.string.hours)
    MeterFigure(last, stringResource(R.string.hours_now), typed, "$hours $digits")
    Keypad({ digits = typed.with(it).digits }, { digits = typed.erased().digits })
    if (wantsPhoto) OnePhoto(photo) { photo = it }
    val whyNot = when {
        figure == null || !fresh -> stringResource(R.string.type_the_meter)
        wantsPhoto && photo == null -> stringResource(R.string.hours_photo_first)
        else -> null
    }
    SecondaryButton(if (asks) view.main else stringResource(R.string.end_it_reads_so), whyNot = whyNot) {
        if (figure != null) if (asks) keepAsked(figure, photo.takeIf { wantsPhoto }) else keep(figure)
    }
}
