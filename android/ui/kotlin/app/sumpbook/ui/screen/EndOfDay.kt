package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import app.sumpbook.R
import app.sumpbook.core.EndOfDaySaid
import app.sumpbook.core.Figure
import app.sumpbook.core.Meter
import app.sumpbook.core.Said
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.MeterFigure
import app.sumpbook.ui.control.MeterTyped
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.control.WordsField
import app.sumpbook.ui.desk.Act
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.LocalOwnWay
import app.sumpbook.ui.words.hours
import java.util.concurrent.atomic.AtomicReference

/** What the next driver will read; an empty [draft] begins a report, durable before its first question. */
@Composable
fun EndOfDay(unit: String, draft: String, signer: Signer) {
    val back = LocalBackStack.current
    val act = rememberAct()
    if (draft.isEmpty()) {
        LaunchedEffect(unit) { act.now({ phone.beginEndOfDay(unit, signer.person) }) { back.goInstead(Place.EndOfDay(unit, it)) } }
        act.refused?.let { Refused(sentence(it)) { back.back() } }
        return
    }
    val shown by seen(draft, signer) { endOfDayView(draft) to signedBy(signer) }
    val told = shown ?: return
    val got = (told as? Told.Got)?.it
    if (got == null) {
        // Signed just now: the draft is gone, and so is this screen in a moment.
        if (!act.underWay) Refused((told as? Told.Refused)?.let { sentence(it.why) }.orEmpty()) { back.unit(unit) }
        return
    }
    val (view, by) = got
    var telling by rememberSaveable { mutableStateOf(false) }
    if (telling) TellDefect(unit, draft, signer, view.record.door) { telling = false }
    else Report(unit, draft, view, by, act, signer) { telling = true }
}

@Composable
private fun Report(unit: String, draft: String, view: EndOfDayView, by: SignedBy, act: Act, signer: Signer, tell: () -> Unit) {
    val back = LocalBackStack.current
    val record = view.record
    val signed = stringResource(R.string.signed)
    // What the shop does not know of is known once it is signed.
    val onlyHere = remember { AtomicReference<String?>(null) }
    val what = stringResource(R.string.end_of_day)
    var toNext by rememberSaveable { mutableStateOf(record.toNext.orEmpty()) }
    val signing = rememberSigning(signer, what, act, {
        // Words typed and not kept go with it, and the notes that stood on this screen.
        phone.sayEndOfDay(draft, EndOfDaySaid(toNext = toNext.trim().ifEmpty { null }, notesSeen = phone.endOfDay(draft).notes.map { note -> note.id }))
        phone.signEndOfDay(draft, it)
        onlyHere.set(lockedOnlyHere(phone.unit(unit, signer.person)))
    }) {
        back.unit(unit)
        // The shift is over with it: it is still read on the screen of the names.
        back.said = listOfNotNull(signed, onlyHere.get()).joinToString(" ")
    }
    var typing by rememberSaveable { mutableStateOf("") }
    val say = { said: EndOfDaySaid -> act.now({ phone.sayEndOfDay(draft, said) }) }
    ScreenFrame(
        header = { DoorHeader(record.door, "$what, ${view.time}") { back.back() } },
        strips = {
            act.refused?.let { Strip(sentence(it), heavy = true) }
            view.notices.forEach { Strip(it) }
        },
        secondary = if (view.whyNot != null || by.trainers.isNotEmpty()) null else ({ WithoutPin(signing, by) }),
        main = {
            val label = if (view.whyNot != null) view.main else signLabel(signing, by, view.main)
            MainPress(label, view.whyNot ?: pinWhyNot(signing, by)) { signing.give(signing.asked(by)) }
        },
    ) {
        Found(view, { act.now({ phone.noneFound(draft) }) }, tell)
        Meters(unit, view, typing, { typing = it }, say) { figure, photo ->
            act.now({ phone.giveHours(Said(unit = unit, person = signer.person, trainer = signer.trainer), Meter.COMPRESSOR, figure, true, photo) })
        }
        view.site?.let { SitePart(it, record.dust) { dust -> say(EndOfDaySaid(dust = dust)) } }
        Section(stringResource(R.string.end_notes), view.notes.map { it.title }.ifEmpty { listOf(stringResource(R.string.end_notes_none)) })
        Section(stringResource(R.string.end_poured), view.poured.ifEmpty { listOf(stringResource(R.string.end_poured_none)) })
        if (record.asksTanks) YesOrNo(stringResource(R.string.end_tanks), record.tanksDrained) { say(EndOfDaySaid(tanksDrained = it)) }
        WordsField(stringResource(R.string.end_to_next), toNext) { toNext = it }
        if (toNext.trim() != record.toNext.orEmpty()) {
            SecondaryButton(stringResource(R.string.end_keep_words)) { say(EndOfDaySaid(toNext = toNext.trim())) }
        }
        view.covers?.let { Text(it, style = LocalType.current.help) }
        // One keypad at a time.
        if (view.whyNot == null && typing.isEmpty()) {
            if (by.trainers.isEmpty()) PinPart(signing, by) else LearnsWith(by, back::learnsWith)
        }
    }
}

/** Defects of today, truck or air: none found, or each by its line. Nothing is chosen beforehand. */
@Composable
private fun ColumnScope.Found(view: EndOfDayView, none: () -> Unit, tell: () -> Unit) {
    Text(stringResource(R.string.end_defects), Modifier.semantics { heading() }, style = LocalType.current.line)
    Chips {
        Chip(view.noneFound, view.record.noneFound, onPress = none)
        Chip(stringResource(R.string.end_defect), view.found.isNotEmpty(), onPress = tell)
    }
    view.found.forEach { Line(it, defect = true) }
}

/** The two figures of an end of day, one keypad at a time. */
@Composable
private fun ColumnScope.Meters(
    unit: String,
    view: EndOfDayView,
    typing: String,
    type: (String) -> Unit,
    say: (EndOfDaySaid) -> Unit,
    keepAsked: (Long, String?) -> Unit,
) {
    var digits by rememberSaveable { mutableStateOf("") }
    // What was asked about stands as a reading of its own: this report shows that it was given.
    var apart by rememberSaveable { mutableStateOf<Long?>(null) }
    val metric = LocalOwnWay.current.metric
    fun open(which: String) {
        type(if (typing == which) "" else which)
        digits = ""
    }
    val hoursName = stringResource(R.string.hours)
    val odometer = stringResource(R.string.odometer)
    Line(hoursName, said = view.hours ?: apart?.let { hours(it) }) { open(HOURS) }
    if (typing == HOURS) {
        HoursOfDay(unit, view.lastHours, {
            say(EndOfDaySaid(hours = it))
            type("")
        }) { figure, photo ->
            keepAsked(figure, photo)
            apart = figure
            type("")
        }
    }
    Line(odometer, said = view.odometer) { open(ODOMETER) }
    if (typing == ODOMETER) {
        val typed = MeterTyped(digits, tenths = false)
        MeterFigure(null, stringResource(R.string.hours_now), typed, "$odometer $digits")
        Keypad({ digits = typed.with(it).digits }, { digits = typed.erased().digits })
        KeepFigure(typed) {
            say(EndOfDaySaid(odometer = Figure(it / 10, 0u, if (metric) "km" else "mi")))
            type("")
        }
    }
}

private const val HOURS = "hours"
private const val ODOMETER = "odometer"

@Composable
private fun KeepFigure(typed: MeterTyped, keep: (Long) -> Unit) {
    val figure = typed.inTenths
    SecondaryButton(stringResource(R.string.end_it_reads_so), whyNot = if (figure == null) stringResource(R.string.type_the_meter) else null) { figure?.let(keep) }
}

/** A defect of the day: first its line, then the same form as in a walk. */
@Composable
private fun TellDefect(unit: String, draft: String, signer: Signer, door: String, done: () -> Unit) {
    val act = rememberAct()
    var line by rememberSaveable { mutableStateOf<String?>(null) }
    var views by remember { mutableStateOf<List<DefectView>?>(null) }
    LaunchedEffect(unit) { act.now({ phone.linesOfUnit(unit).map { defectView(door, it) } }) { views = it } }
    val chosen = views?.firstOrNull { it.line.row.id == line }
    if (chosen != null) {
        DefectForm(chosen, act.refused?.let { sentence(it) }, { line = null }, other = false) { answer ->
            act.now({ phone.defectFound(draft, answer) }) { done() }
        }
        return
    }
    ScreenFrame(
        header = { DoorHeader(door, stringResource(R.string.end_which_line), goBack = done) },
        strips = { act.refused?.let { Strip(sentence(it), heavy = true) } },
    ) {
        views?.forEach { of -> Line(of.line.name, under = of.line.ok) { line = of.line.row.id } }
    }
}
