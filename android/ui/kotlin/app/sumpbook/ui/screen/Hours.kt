package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.MainAct
import app.sumpbook.core.Meter
import app.sumpbook.core.QuestionRow
import app.sumpbook.core.Said
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.MeterFigure
import app.sumpbook.ui.control.MeterTyped
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.rememberPictureTaker
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.capital
import app.sumpbook.ui.words.hours

/** What stands beside the figure: the meters there are, and what is open about their readings. */
private data class MetersView(val hours: HoursView, val meters: List<Pair<Meter, String>>, val last: Pair<String, Long>?, val notes: List<String>)

private fun Reader.metersView(unit: String, meter: Meter, typed: Long?): MetersView {
    val of = hoursView(unit, typed, meter)
    val record = of.record
    val notes = listOfNotNull(
        if (record.counted) words("hours-counted") else null,
        if (record.last == null && !record.counted) words("hours-first") else null,
        record.ceiling?.let { words("hours-ceiling", "figure" to hours(it)) },
    )
    return MetersView(
        hours = of,
        meters = Meter.entries.map { it to words("meter-${it.name.lowercase()}") },
        last = record.last?.let { moments.at(it.at) to it.figure },
        notes = notes + record.questions.map(::questionWords),
    )
}

/** An open question about readings, with both figures. */
fun Reader.questionWords(question: QuestionRow): String {
    val figures = (question.standing + question.disputing).joinToString(" / ") { hours(it.figure) }
    return listOf(words("question-${question.why}"), figures).joinToString(" ")
}

/** A true figure: it fills from the right like the meter, under the last one. */
@Composable
fun Hours(unit: String, signer: Signer) {
    val back = LocalBackStack.current
    val act = rememberAct()
    val entry = rememberEntryId()
    var digits by rememberSaveable { mutableStateOf("") }
    var meter by rememberSaveable { mutableStateOf(Meter.COMPRESSOR) }
    var which by rememberSaveable { mutableStateOf(false) }
    var photo by rememberSaveable { mutableStateOf<String?>(null) }
    val typed = MeterTyped(digits)
    val shown by seen(unit, meter, typed.inTenths) { metersView(unit, meter, typed.inTenths) }
    val told = shown ?: return
    val view = (told as? Told.Got)?.it ?: return Refused((told as? Told.Refused)?.let { sentence(it.why) }.orEmpty()) { back.back() }
    val record = view.hours.record
    val figure = typed.inTenths
    // While the core is being asked about a digit the answer to the one before does not stand for it.
    val fresh = record.typed == figure && record.meter == meter
    fun give(kept: Boolean) {
        val said = Said(unit = unit, person = signer.person, id = entry, trainer = signer.trainer)
        if (figure != null) act.now({ phone.giveHours(said, meter, figure, kept, photo.takeIf { kept }) }) { back.back() }
    }
    // What cannot be is kept with a photo of the meter, for the shop to settle: where there is a camera.
    val taker = rememberPictureTaker { bytes -> act.now({ phone.keepPhoto(bytes) }) { photo = it } }
    val wantsPhoto = fresh && record.main.act is MainAct.KeepWithPhoto && taker != null
    ScreenFrame(
        header = { DoorHeader(record.door, capital(view.meters.first { it.first == meter }.second)) { back.back() } },
        strips = {
            act.refused?.let { Strip(sentence(it), heavy = true) }
            view.hours.asked?.takeIf { fresh }?.let { Strip(it, heavy = true, small = wantsPhoto, calls = false) }
        },
        secondary = {
            // In their place: a row more would cut the keys. One digit taken back, and they are there again.
            if (wantsPhoto) return@ScreenFrame PhotoButtons(taker)
            if (!which) SecondaryButton(stringResource(R.string.which_meter)) { which = true }
            if (digits.isNotEmpty()) SecondaryButton(stringResource(R.string.type_again)) { digits = "" }
        },
        main = {
            val photoFirst = wantsPhoto && photo == null
            val whyNot = when {
                figure == null || !fresh -> stringResource(R.string.type_the_meter)
                photoFirst -> stringResource(R.string.hours_photo_first)
                else -> null
            }
            // With each digit the core is asked anew: nothing may move for that moment.
            MainPress(view.hours.main, whyNot, whyAbove = photoFirst) {
                give(kept = record.main.act.let { it is MainAct.YesItReads || it is MainAct.KeepWithPhoto })
            }
        },
        low = true,
    ) {
        if (which) {
            Asked(stringResource(R.string.which_meter), view.meters.map { it.first.name to it.second }, meter.name) {
                meter = Meter.valueOf(it)
                digits = ""
                which = false
            }
        }
        if (fresh) Hints(view.hours.hints)
        if (view.hours.asked == null) view.notes.forEach { Text(it, style = LocalType.current.help) }
        if (wantsPhoto) PhotosWithIt(listOfNotNull(photo).size)
        val now = stringResource(R.string.hours_now)
        val says = listOfNotNull(view.last?.let { (at, figure) -> "$at ${hours(figure)}" }, "$now ${figure?.let(::hours).orEmpty()}").joinToString(", ")
        Column(verticalArrangement = Arrangement.spacedBy(4.dp)) {
            MeterFigure(view.last, now, typed, says)
            Keypad({ digits = typed.with(it).digits }, { digits = typed.erased().digits })
        }
    }
}
