package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import app.sumpbook.R
import app.sumpbook.core.AirField
import app.sumpbook.core.AirPart
import app.sumpbook.core.AirSaid
import app.sumpbook.core.JobSaid
import app.sumpbook.ui.control.CheckLine
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.theme.LocalType

/** Air for the job: what is left over, at what pressure, and what to look out for. It records nothing and refuses nothing. */
@Composable
fun AirForTheJob(unit: String) {
    val back = LocalBackStack.current
    // One line a figure: "HOLDS|0|100". What was said outlives the app being ended in the background.
    var lines by rememberSaveable { mutableStateOf(listOf<String>()) }
    var cutOff by rememberSaveable { mutableStateOf<Boolean?>(null) }
    var blowing by rememberSaveable { mutableStateOf(false) }
    var guarded by rememberSaveable { mutableStateOf(false) }
    var tools by rememberSaveable { mutableStateOf(1) }
    var open by rememberSaveable { mutableStateOf<String?>(null) }
    val said = JobSaid(lines.map(::airSaid), cutOff, blowing, guarded)
    val shown by seen(unit, said) { airJobView(unit, said) }
    val told = shown ?: return
    val view = (told as? Told.Got)?.it ?: return Refused((told as? Told.Refused)?.let { sentence(it.why) }.orEmpty()) { back.back() }
    val door = view.record.door.orEmpty()
    val asked = view.groups.flatMap { it.fields }.firstOrNull { it.row.place() == open }
    if (asked != null) {
        fun say(figure: String?) {
            lines = lines.filterNot { it.startsWith("$open|") } + listOfNotNull(figure?.let { "$open|$it" })
            open = null
        }
        FigureAsk(door, asked.wanted, goBack = { open = null }, clear = if (asked.row.said == null) null else ({ say(null) })) { say(it) }
        return
    }
    ScreenFrame(
        header = { DoorHeader(door, stringResource(R.string.air_for_the_job)) { back.back() } },
        main = { MainPress(view.main) { view.next?.let { open = it.place() } ?: back.back() } },
    ) {
        view.cautions.forEach { Strip(it, small = true) }
        Text(view.saysWhat, style = LocalType.current.help)
        Section(view.answerTitle, view.answer)
        view.warnings.forEach { Strip(it) }
        for (group in view.groups) {
            if (group.tool > tools) continue
            Group(group) { open = it }
            if (group.tool == tools && tools < MOST_TOOLS) Line(view.anotherTool) { tools++ }
            if (group.part == AirPart.HOSE) YesOrNo(view.cutOff, cutOff) { cutOff = it }
        }
        CheckLine(view.blowing, blowing) { blowing = it }
        if (blowing) {
            Strip(view.blowCaution, small = true)
            CheckLine(view.guarded, guarded) { guarded = it }
        }
    }
}

@Composable
private fun ColumnScope.Group(group: AirGroup, open: (String) -> Unit) {
    Text(group.title, Modifier.semantics { heading() }, style = LocalType.current.heading)
    group.fields.forEach { field ->
        Line(field.wanted.name, under = field.wanted.wrong, said = field.wanted.said.takeIf { field.wanted.wrong == null }) { open(field.row.place()) }
    }
}

/** Which figure of which tool, as it is kept. */
private fun app.sumpbook.core.AirFieldRow.place(): String = "${field.name}|$tool"

private fun airSaid(line: String): AirSaid {
    val (field, tool, said) = line.split("|", limit = 3)
    return AirSaid(AirField.valueOf(field), tool.toUByte(), said)
}

/** Tools the core has room for. */
private const val MOST_TOOLS = 4
