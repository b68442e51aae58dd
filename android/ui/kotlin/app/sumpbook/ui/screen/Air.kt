package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import app.sumpbook.R
import app.sumpbook.core.LockState
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.control.WordsField
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.mark.StepLine
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalType
import java.time.Instant

/** Starting or stopping air on a unit, with its words. */
private data class AirView(
    val door: String,
    val person: String,
    val trainer: String?,
    val steps: List<AirStep>,
    /** Why the air is locked; none: no lock on record. */
    val locked: PartWords?,
    val opening: String,
)

private fun Reader.airView(unit: String, start: Boolean, signer: Signer): AirView {
    val here = fleet.units.first { it.id == unit }
    val air = phone.unit(unit, signer.person).roadAir
    fun name(id: String?) = fleet.people.firstOrNull { it.id == id }?.name
    return AirView(
        door = here.door,
        person = name(signer.person).orEmpty(),
        trainer = name(signer.trainer),
        steps = airSteps(here, start),
        locked = roadAirWords(air)[1].takeIf { start && air.air.state != LockState.NO_LOCK_ON_RECORD },
        opening = words("caution-opening"),
    )
}

/** A step confirmed, or found not so, with its moment. */
private data class Confirmed(val step: String, val at: String, val notSo: Boolean = false)

/** One step, one caution, in order. With the air locked it opens at the lock, not at the first step. */
@Composable
fun Air(unit: String, start: Boolean, signer: Signer) {
    val back = LocalBackStack.current
    val act = rememberAct()
    val handset = LocalDesk.current.handset
    val entry = rememberEntryId()
    var kept by rememberSaveable { mutableStateOf(emptyList<String>()) }
    var stopped by rememberSaveable { mutableStateOf(false) }
    var spite by rememberSaveable { mutableStateOf("") }
    var used by rememberSaveable { mutableStateOf(false) }
    val shown by seen(unit, start) { airView(unit, start, signer) }
    val told = shown ?: return
    val view = (told as? Told.Got)?.it ?: return Refused((told as? Told.Refused)?.let { sentence(it.why) }.orEmpty()) { back.back() }
    val done = kept.map { line -> line.split("|").let { Confirmed(it[0], it[1]) } }
    val step = view.steps.getOrNull(done.size)
    fun stamp() = Instant.ofEpochMilli(handset.now()).toString()
    fun record(all: List<Confirmed>) {
        val line = airLine(view.door, view.person, view.trainer, entry, start, all, spite.trim().ifEmpty { null })
        act.now({ phone.recordLine(line) }) { back.back() }
    }
    fun confirm(of: AirStep) {
        val now = Confirmed(of.id, stamp())
        if (done.size + 1 < view.steps.size) kept = kept + "${now.step}|${now.at}" else record(done + now)
    }
    val about = stringResource(if (start) R.string.start_air else R.string.stop_air)
    val locked = view.locked
    ScreenFrame(
        header = { DoorHeader(view.door, "$about ${(done.size + 1).coerceAtMost(view.steps.size)} / ${view.steps.size}") { back.back() } },
        strips = {
            act.refused?.let { Strip(sentence(it), heavy = true) }
            if (done.isEmpty() && !stopped) Strip(view.opening)
            locked?.let { Strip((listOf(it.what) + it.why).joinToString(". "), heavy = true) }
        },
        secondary = if (stopped || (locked != null && !used)) null else ({ SecondaryButton(stringResource(R.string.not_so)) { stopped = true } }),
        main = {
            when {
                locked != null && !used ->
                    MainPress(stringResource(R.string.air_all_the_same), if (spite.isBlank()) stringResource(R.string.reason_first) else null) { used = true }
                step == null -> MainPress(stringResource(R.string.back)) { back.back() }
                stopped -> MainPress(stringResource(R.string.stop_here)) {
                    // Before the turning point nothing has started, or stopped: there is nothing to record.
                    if (done.any { it.step == turningPoint(start) } || step.id == turningPoint(start)) record(done + Confirmed(step.id, stamp(), notSo = true))
                    else back.back()
                }
                else -> MainPress(stringResource(if (done.size + 1 == view.steps.size) R.string.done_all else R.string.done_next)) { confirm(step) }
            }
        },
    ) {
        if (locked != null && !used) WordsField(stringResource(R.string.air_why_all_the_same), spite) { spite = it }
        else if (step != null) {
            StepLine(view.steps.size, done.size)
            StepPart(step, stopped)
        }
    }
}

@Composable
private fun ColumnScope.StepPart(step: AirStep, stopped: Boolean) {
    val type = LocalType.current
    // At the largest sizes a title would break its longest word.
    Text(step.name, Modifier.semantics { heading() }, style = if (LocalDensity.current.fontScale > 1.5f) type.heading else type.title)
    if (stopped) {
        Section(null, step.notSo)
        Strip(step.stops, heavy = true)
        Text(stringResource(R.string.tell_the_shop), style = type.text)
        return
    }
    Text(step.ok, style = type.heading)
    step.outlets.forEach { Text(it, style = type.line) }
    step.caution?.let { Strip(it) }
}

/** A start or a stop as the core reads a line of JSON. */
private fun airLine(door: String, person: String, trainer: String?, id: String?, start: Boolean, steps: List<Confirmed>, spite: String?): String {
    val each = steps.joinToString(",") { """{"step":${quoted(it.step)},"at":${quoted(it.at)},"not-so":${it.notSo}}""" }
    val body = listOfNotNull(""""steps":[$each]""", spite?.takeIf { start }?.let { """"in-spite-of-lock":${quoted(it)}""" }).joinToString(",")
    val fields = listOfNotNull(
        """"unit":${quoted(door)}""", """"person":${quoted(person)}""",
        trainer?.let { """"with":${quoted(it)}""" }, id?.let { """"id":${quoted(it)}""" },
        """"kind":"${if (start) "start-air" else "stop-air"}"""", """"body":{$body}""",
    )
    return "{${fields.joinToString(",")}}"
}

/** A JSON string (RFC 8259, 7). */
private fun quoted(text: String): String = text.map { sign ->
    when {
        sign == '"' || sign == '\\' -> "\\$sign"
        sign < ' ' -> "\\u%04x".format(sign.code)
        else -> sign.toString()
    }
}.joinToString("", "\"", "\"")
