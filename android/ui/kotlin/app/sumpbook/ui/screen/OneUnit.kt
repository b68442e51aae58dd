package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.foundation.layout.FlowRow
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.rememberScrollState
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.MainAct
import app.sumpbook.ui.control.Gap
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.control.TwoClockRuler
import app.sumpbook.ui.desk.Act
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.mark.PairLook
import app.sumpbook.ui.mark.StateTag
import app.sumpbook.ui.mark.daysClock
import app.sumpbook.ui.mark.hoursClock
import app.sumpbook.ui.mark.runsOut
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/** Is it locked, what did the last one leave, which oil, how long till service. */
@Composable
fun OneUnit(unit: String, signer: Signer) {
    val shown by seen(unit, signer.person) { unitView(unit, signer.person) }
    val told = shown ?: return
    val view = (told as? Told.Got)?.it
    val back = LocalBackStack.current
    val act = rememberAct()
    var more by rememberSaveable { mutableStateOf(false) }
    val scroll = rememberScrollState()
    // What is more stands above the record; pressed below it, with large text, it would not be seen.
    LaunchedEffect(more) { scroll.scrollTo(0) }
    ScreenFrame(
        scroll = scroll,
        header = {
            val look = view?.let { PairLook.of(it.record.roadAir, it.record.news.old) }
            DoorHeader(view?.record?.door.orEmpty(), view?.day, look) { back.back() }
        },
        strips = {
            if (told is Told.Refused) Strip(sentence(told.why))
            act.refused?.let { Strip(sentence(it), heavy = true) }
            back.said?.let { Strip(it) }
            view?.lockedOnlyHere?.let { Strip(it, heavy = true) }
            view?.news?.forEach { Strip(it) }
        },
        secondary = { UnitActs(unit, view, more) { more = it } },
        main = view?.let { { MainPress(it.main) { goOn(act, back, signer, unit, it.record.main.act) } } },
    ) {
        if (view != null) {
            if (more) UnitMore(unit, view, signer, act)
            // A procedure that was left in the middle: by a kill of the app, nobody leaves one without its record.
            (view.procedures + (view.record.air to view.air)).firstOrNull { it.first == view.record.stepsUnderWay }?.let { (procedure, title) ->
                Line(stringResource(R.string.steps_go_on, title)) { back.go(Place.Steps(unit, procedure)) }
            }
            // Their mark stands in the header, beside the number.
            Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp)) { view.parts.forEach { PartLine(it) } }
            WhenLocked(unit, view)
            Section(null, listOf(view.preTrip))
            LeftByPart(unit, view)
            Section(null, view.open)
            Section(stringResource(R.string.oil), view.oil + view.oilUse)
            if (view.tasks.isEmpty()) Text(stringResource(R.string.no_programme_set), style = LocalType.current.text)
            view.tasks.forEach { TaskLines(it) }
            Section(stringResource(R.string.pours), view.pours)
            Section(stringResource(R.string.hours), view.hours + view.unsettled)
            Section(null, view.unlike)
        }
    }
}

/** What is done with the unit most; the rest is one tap further, above its record. */
@Composable
private fun UnitActs(unit: String, view: UnitView?, more: Boolean, show: (Boolean) -> Unit) {
    val back = LocalBackStack.current
    SecondaryButton(stringResource(R.string.oil)) { back.go(Place.TopUp(unit, view?.record?.topUpDraft.orEmpty())) }
    view?.let { SecondaryButton(it.air) { back.go(Place.Steps(unit, it.record.air)) } }
    SecondaryButton(stringResource(R.string.display)) { back.go(Place.Display(unit, "")) }
    if (!view?.record?.slipFor.isNullOrEmpty()) SecondaryButton(stringResource(R.string.slip_code)) { back.go(Place.Slip(unit)) }
    SecondaryButton(stringResource(if (more) R.string.less else R.string.more)) { show(!more) }
}

/** What else of a day's work may be begun, beside the main button. */
@Composable
private fun alsoWords(act: MainAct): String = stringResource(if (act is MainAct.StartPreTrip) R.string.another_pre_trip else R.string.end_of_day)

/** What is done seldom. */
@Composable
private fun ColumnScope.UnitMore(unit: String, view: UnitView, signer: Signer, act: Act) {
    val back = LocalBackStack.current
    view.record.also.forEach { other -> Line(alsoWords(other)) { goOn(act, back, signer, unit, other) } }
    view.procedures.forEach { (procedure, title) -> Line(title) { back.go(Place.Steps(unit, procedure)) } }
    Line(stringResource(R.string.glass)) { back.go(Place.Glass(unit)) }
    Line(stringResource(R.string.running)) { back.go(Place.Running(unit)) }
    Line(stringResource(R.string.air_for_the_job)) { back.go(Place.AirForTheJob(unit)) }
    Line(stringResource(R.string.hours)) { back.go(Place.Hours(unit)) }
    Line(stringResource(R.string.it_happened)) { back.go(Place.Happened(unit)) }
    Line(stringResource(R.string.other_unit)) { back.go(Place.OtherUnit(unit)) }
    Line(stringResource(R.string.roadside)) { back.go(Place.Roadside(unit)) }
}

/** A lock's next steps: whom to call, and the truth about what was used in spite of it. */
@Composable
private fun WhenLocked(unit: String, view: UnitView) {
    if (view.record.usedAllTheSame.isEmpty()) return
    val back = LocalBackStack.current
    FlowRow(Modifier.fillMaxWidth(), Arrangement.spacedBy(Gap), Arrangement.spacedBy(Gap)) {
        CallThem(view.onCall)
        SecondaryButton(stringResource(R.string.used_all_the_same)) { back.go(Place.Used(unit)) }
    }
}

/** What the last one left: its first line, and all of it behind a tap, walk or no walk. */
@Composable
private fun LeftByPart(unit: String, view: UnitView) {
    val back = LocalBackStack.current
    val under = (view.leftBy.drop(1) + view.notes).joinToString("\n").ifEmpty { null }
    Line(view.leftBy.first(), under = under) { back.go(Place.LastReport(unit, "")) }
}

@Composable
private fun TaskLines(task: TaskWords) {
    val type = LocalType.current
    Column(Modifier, Arrangement.spacedBy(4.dp)) {
        Text(task.name, style = type.line)
        StateTag(task.row.standing, task.standing)
        TwoClockRuler(task.row.hoursClock(), task.row.daysClock(), task.row.runsOut(), task.hours, task.calendar, task.says)
        for (line in task.more) Text(line, style = type.help, color = LocalTokens.current.soft)
    }
}

/** A heading and the lines under it; nothing where there are none. */
@Composable
fun Section(title: String?, lines: List<String>) {
    if (lines.isEmpty()) return
    Column(Modifier, Arrangement.spacedBy(4.dp)) {
        if (title != null) Text(title, Modifier.semantics { heading() }, style = LocalType.current.heading)
        lines.forEach { Text(it, style = LocalType.current.text) }
    }
}
