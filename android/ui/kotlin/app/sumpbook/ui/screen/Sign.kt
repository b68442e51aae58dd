package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.FlowRow
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.pluralStringResource
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.Quick
import app.sumpbook.core.SignScreen
import app.sumpbook.core.StopMark
import app.sumpbook.ui.control.Gap
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.mark.WalkLine
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.minutesAndSeconds
import java.util.concurrent.atomic.AtomicReference

/** What one puts one's name to: the whole walk, each stop a way back to it, then the PIN. */
@Composable
fun Sign(unit: String, draft: String, signer: Signer) {
    val desk = LocalDesk.current
    val back = LocalBackStack.current
    val act = rememberAct()
    val walked = remember { desk.walks.walkedMs(draft) }
    val shown by seen(draft, signer, walked) { signView(draft, walked) to signedBy(signer) }
    val told = shown ?: return
    val got = (told as? Told.Got)?.it
    if (got == null) {
        // Signed just now: the draft is gone, and so is this screen in a moment.
        if (!act.underWay) Refused((told as? Told.Refused)?.let { sentence(it.why) }.orEmpty()) { back.unit(unit) }
        return
    }
    val (view, by) = got
    var whole by remember { mutableStateOf(false) }
    val record = view.record
    val plain = stringResource(R.string.signed)
    val locking = stringResource(R.string.signed_locked, PARTS)
    // What is locked is known once it is signed.
    val locked = remember { AtomicReference<List<String>>(emptyList()) }
    val what = stringResource(R.string.pre_trip)
    val signing = rememberSigning(signer, what, act, {
        phone.signPreTrip(draft, it, false, desk.walks.walkedMs(draft))
        locked.set(lockedParts(unit, signer.person))
    }) {
        back.unit(unit)
        back.said = locked.get().let { if (it.isEmpty()) plain else locking.replace(PARTS, it.joinToString(", ")) }
    }
    ScreenFrame(
        header = { SumHeader(view) },
        strips = {
            act.refused?.let { Strip(sentence(it), heavy = true) }
            // With a time it stands in the header; the keypad needs the room.
            if (record.quick != null && !saidInHeader(record)) Strip(quickWords(record))
        },
        secondary = {
            SecondaryButton(stringResource(R.string.back)) { view.stops.lastOrNull()?.let { back.goInstead(Place.Stop(unit, draft, it.label)) } ?: back.back() }
            if (record.openStop == null && by.trainers.isEmpty()) WithoutPin(signing, by)
        },
        main = { SignPress(view, signing, by) { back.goInstead(Place.Stop(unit, draft, it)) } },
    ) {
        Line(summary(record), under = underSummary(record)) { whole = !whole }
        if (whole) view.stops.forEach { StopLine(it) { back.goInstead(Place.Stop(unit, draft, it.label)) } }
        // Close together: the keys of the PIN just fit under them.
        Column(verticalArrangement = Arrangement.spacedBy(4.dp)) {
            (view.defects + view.other).forEach { Text(it, style = LocalType.current.text) }
            view.figures?.let { Text(it, style = LocalType.current.help) }
            Text(stringResource(R.string.what_i_saw), style = LocalType.current.text)
            if (record.openStop == null && by.trainers.isEmpty()) PinPart(signing, by)
        }
        if (record.openStop == null && by.trainers.isNotEmpty()) LearnsWith(by, back::learnsWith)
    }
}

@Composable
private fun SignPress(view: SignView, signing: Signing, by: SignedBy, goTo: (String) -> Unit) {
    val open = view.record.openStop
    if (open != null) return MainPress(stringResource(R.string.stop_is_open, view.record.openAt.toString())) { goTo(open) }
    val sign = by.trainer?.let { stringResource(R.string.sign_as_with, by.own.name, it.name) } ?: stringResource(R.string.sign_as, by.own.name)
    val whyNot = pinWhyNot(signing, by)
    MainPress(signLabel(signing, by, sign), whyNot, whyAbove = by.trainers.isNotEmpty()) { signing.give(signing.asked(by)) }
}

/** "done in 1:05, look again?"; or one of the brake tests was cut short. */
@Composable
private fun quickWords(record: SignScreen): String = when (record.quick) {
    Quick.WALK -> stringResource(R.string.quick_done_in, minutesAndSeconds((record.walkedMs ?: 0uL).toLong()))
    Quick.BRAKE_TEST -> stringResource(R.string.quick)
    null -> ""
}

/** A quick walk stands beside its time, in the header. */
private fun saidInHeader(record: SignScreen): Boolean = record.quick == Quick.WALK

@Composable
private fun summary(record: SignScreen): String = listOfNotNull(
    stringResource(R.string.sum_ok, record.ok.toInt()),
    record.byOther.toInt().takeIf { it > 0 }?.let { stringResource(R.string.sum_by_other, it) },
    pluralStringResource(R.plurals.sum_defects, record.defects.size, record.defects.size),
    stringResource(R.string.sum_other, record.notChecked.size),
).joinToString(", ")

/** How it was answered; the line itself opens the stops. */
@Composable
private fun underSummary(record: SignScreen): String {
    val together = record.okTogether.toInt()
    return if (together > 0) stringResource(R.string.sum_together, together) else stringResource(R.string.look_again_at_a_stop)
}

@Composable
private fun StopLine(row: StopRow, open: () -> Unit) =
    Line("${row.at} ${row.title}", under = row.under, defect = row.mark == StopMark.DEFECT, onPress = open)

@Composable
private fun SumHeader(view: SignView) {
    val type = LocalType.current
    val door = view.record.door
    val title = stringResource(if (view.record.short) R.string.pre_trip_short else R.string.pre_trip)
    val walked = view.record.walkedMs
    WalkLine(view.marks, null, "$door, $title") {
        Column(Modifier.fillMaxWidth()) {
            FlowRow(Modifier.fillMaxWidth(), Arrangement.SpaceBetween) {
                // The two never touch: where they just fit they take a row each.
                Text(door, Modifier.padding(end = Gap).semantics { heading() }, style = type.doorInHeader)
                Text("$title, ${view.day}", style = type.line)
            }
            // Quick is told before the name stands under it; nothing is refused for it.
            if (saidInHeader(view.record)) Text(quickWords(view.record), style = type.line)
            else if (walked != null) Text(stringResource(R.string.done_in, minutesAndSeconds(walked.toLong())), style = type.help)
        }
    }
}

/** Stands in a sentence where the locked parts will. */
private const val PARTS = "{parts}"
