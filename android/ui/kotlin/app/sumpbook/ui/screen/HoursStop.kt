package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.layout.Layout
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.DisabledReason
import app.sumpbook.core.Hint
import app.sumpbook.core.HoursScreen
import app.sumpbook.core.KeyboardAnswer
import app.sumpbook.core.MainAct
import app.sumpbook.core.Meter
import app.sumpbook.core.keyOfHint
import app.sumpbook.ui.control.Gap
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.MeterFigure
import app.sumpbook.ui.control.MeterTyped
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.LocalPictures
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.LocalOwnWay
import app.sumpbook.ui.words.hours

/** The meter's figure as it is typed, with its words. */
data class HoursView(val record: HoursScreen, val before: String?, val asked: String?, val main: String, val hints: List<String> = emptyList())

/** The hours of a unit by one of its meters, with so many tenths typed. */
fun Reader.hoursView(unit: String, typed: Long?, meter: Meter = Meter.COMPRESSOR): HoursView {
    val record = phone.hours(unit, typed, meter)
    val figure = hours(typed ?: 0)
    return HoursView(
        record = record,
        before = record.last?.let { moments.at(it.at) },
        asked = when (val asked = record.asked) {
            is KeyboardAnswer.AboveCeiling -> words("asked-above-ceiling", "ceiling" to hours(asked.ceiling), "figure" to figure)
            is KeyboardAnswer.Backwards -> words("asked-backwards", "last" to hours(asked.last), "figure" to figure)
            is KeyboardAnswer.UnlikeThisUnit ->
                words("asked-unlike-this-unit", "rise" to hours(asked.rise), "seldom" to hours(asked.seldomAbove), "figure" to figure)
            KeyboardAnswer.Fits, KeyboardAnswer.SlippedBack, null -> null
        },
        main = label(record.main, record.door),
        hints = hintsOf(record.asked).map(::hintWords),
    )
}

private fun hintsOf(asked: KeyboardAnswer?): List<Hint> = when (asked) {
    is KeyboardAnswer.AboveCeiling -> asked.hints
    is KeyboardAnswer.Backwards -> asked.hints
    is KeyboardAnswer.UnlikeThisUnit, KeyboardAnswer.Fits, KeyboardAnswer.SlippedBack, null -> emptyList()
}

/** What would explain the figure, with what it would read then. */
private fun Reader.hintWords(hint: Hint): String {
    val reads = when (hint) {
        is Hint.TypedWrong -> hint.reads
        is Hint.EarlierTypedWrong -> hint.reads
        is Hint.WentRound, Hint.MeterChanged, Hint.OtherMeterOrTruck -> null
    }
    return listOfNotNull(words(keyOfHint(hint)), reads?.let { words("hint-reads", "figure" to hours(it)) }).joinToString(" ")
}

/**
 * The question about a figure, where the lines stand otherwise: the keys stay where they are under the thumb that types.
 * The lines are there again as soon as it is answered.
 */
@Composable
private fun InPlaceOf(asks: Boolean, question: @Composable () -> Unit, lines: @Composable () -> Unit) {
    Layout(
        contents = listOf(
            { Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(Gap)) { lines() } },
            { if (asks) Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp)) { question() } },
        ),
    ) { (rows, asked), constraints ->
        val under = rows.first().measure(constraints)
        val over = asked.firstOrNull()?.measure(constraints)
        layout(constraints.maxWidth, maxOf(under.height, over?.height ?: 0)) { (over ?: under).placeRelative(0, 0) }
    }
}

/** The stop at the display: its lines, and the meter's figure typed on the same screen. */
@Composable
fun HoursStop(open: OpenStop) {
    val line = open.view.lines.firstOrNull { it.row.answer == null && it.row.figure?.unit == "h" }
    var digits by rememberSaveable { mutableStateOf("") }
    var kept by rememberSaveable { mutableStateOf(false) }
    val typed = MeterTyped(digits)
    val shown by seen(open.unit, typed.inTenths) { hoursView(open.unit, typed.inTenths) }
    val view = (shown as? Told.Got)?.it
    // What the core asks about is answered before the stop is.
    val asks = view?.record?.main?.act.let { it is MainAct.YesItReads || it is MainAct.KeepWithPhoto } && !kept
    var touched by rememberSaveable { mutableStateOf(false) }
    var photo by rememberSaveable { mutableStateOf<String?>(null) }
    val wantsPhoto = view?.record?.main?.act is MainAct.KeepWithPhoto && LocalPictures.current != null
    fun type(now: MeterTyped) {
        touched = true
        digits = now.digits
        kept = false
    }
    // Digits come faster than a draft is kept: the last figure is, whatever became of those before.
    val desk = LocalDesk.current
    val way = LocalOwnWay.current
    LaunchedEffect(typed.inTenths, touched) {
        if (touched) desk.ask(way) { phone.preTripHours(open.draft, typed.inTenths) }
    }
    val main: @Composable () -> Unit = {
        when {
            // The core has not looked at the last digit yet.
            line != null && touched && view?.record?.typed != typed.inTenths ->
                MainPress(open.view.main, stringResource(R.string.type_the_meter), whyAbove = false) {}
            // The reason stands with the question: a line more here would cut the keys.
            line != null && view != null && asks ->
                MainPress(view.main, if (wantsPhoto && photo == null) stringResource(R.string.hours_photo_first) else null, whyAbove = false) { kept = true }
            line != null && typed.inTenths == null && open.view.record.main.whyNot is DisabledReason.FigureMissing ->
                MainPress(stringResource(R.string.type_the_meter), stringResource(R.string.type_the_meter), whyAbove = false) {}
            line != null && touched -> MainOfStop(open) {
                phone.preTripHours(open.draft, typed.inTenths)
                photo?.takeIf { wantsPhoto }?.let { phone.answerLine(open.draft, okWith(line.row, it)) }
            }
            else -> MainOfStop(open)
        }
    }
    StopFrame(open, main) { hints ->
        // Close together: with three lines above it the last row of keys just fits.
        Column(verticalArrangement = Arrangement.spacedBy(4.dp)) {
            InPlaceOf(
                asks && line != null,
                question = {
                    view?.asked?.let { Strip(it, small = wantsPhoto) }
                    Hints(view?.hints.orEmpty())
                    if (wantsPhoto && photo == null) Text(stringResource(R.string.hours_photo_first), style = LocalType.current.strong)
                    if (wantsPhoto) OnePhoto(photo) { photo = it }
                },
            ) { open.view.lines.forEach { LineOf(it, open, hints) } }
            if (line != null) {
                val last = view?.record?.last
                val now = stringResource(R.string.hours_now)
                val says = listOfNotNull(last?.let { "${view.before} ${hours(it.figure)}" }, "$now ${typed.inTenths?.let(::hours).orEmpty()}").joinToString(", ")
                MeterFigure(last?.let { view.before.orEmpty() to it.figure }, now, typed, says)
                Keypad({ type(typed.with(it)) }, { type(typed.erased()) })
            }
        }
    }
}
