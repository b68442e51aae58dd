package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.FlowRow
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.pluralStringResource
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.DefectName
import app.sumpbook.core.RepairVerdict
import app.sumpbook.core.slipDigits
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.Places
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/** A lock that a slip may speak of. */
private data class Locked(val name: DefectName, val title: String)

/** What a slip may speak of here, and this phone's name: a slip has a code for each phone. */
private data class SlipView(val door: String, val phone: String, val digits: Int, val locks: List<Locked>)

private fun Reader.lockedBy(unit: String, person: String): SlipView {
    val record = phone.unit(unit, person)
    return SlipView(record.door, phone.about().device, slipDigits().toInt(), record.slipFor.map { Locked(it, item(it.item, it.place)) })
}

private fun Reader.verdictWords(verdict: RepairVerdict): String =
    words(if (verdict == RepairVerdict.REPAIRED) "verdict-repaired" else "verdict-not-needed")

/** The code of a certificate's slip, typed where there is no signal. */
@Composable
fun Slip(unit: String, signer: Signer) {
    val back = LocalBackStack.current
    val act = rememberAct()
    var digits by rememberSaveable { mutableStateOf("") }
    var which by rememberSaveable { mutableStateOf(0) }
    val shown by seen(unit, signer.person) { lockedBy(unit, signer.person) }
    val view = (shown as? Told.Got)?.it
    val locks = view?.locks.orEmpty()
    val of = view?.digits ?: 0
    val chosen = locks.getOrNull(which)
    val said = stringResource(R.string.slip_taken)
    val whyNot = when {
        chosen == null -> stringResource(R.string.nothing_locked)
        digits.length < of -> (of - digits.length).let { pluralStringResource(R.plurals.slip_digits_left, it, it) }
        else -> null
    }
    ScreenFrame(
        header = { DoorHeader(view?.door.orEmpty(), stringResource(R.string.slip_code)) { back.back() } },
        strips = {
            (shown as? Told.Refused)?.let { Strip(sentence(it.why), heavy = true) }
            // Small: the keys under it are to be whole just when a digit is to be mended.
            act.refused?.let { Strip(sentence(it), heavy = true, small = true) }
        },
        main = {
            MainPress(stringResource(R.string.slip_take), whyNot) {
                chosen?.let { lock ->
                    act.now({ verdictWords(phone.acceptSlip(digits, unit, lock.name, signer.person)) }) { verdict ->
                        back.back()
                        back.said = said.format(lock.title, verdict)
                    }
                }
            }
        },
    ) {
        if (locks.size > 1) Chips { locks.forEachIndexed { n, lock -> Chip(lock.title, n == which) { which = n } } }
        else chosen?.let { Text(it.title, style = LocalType.current.line) }
        val where = @Composable { Text(stringResource(R.string.slip_where, view?.phone.orEmpty()), style = LocalType.current.help, color = LocalTokens.current.soft) }
        // What was refused takes its room.
        if (act.refused == null) where()
        SlipDigits(digits, of)
        Keypad({ if (digits.length < of) digits += it }, { digits = digits.dropLast(1) })
        if (act.refused != null) where()
    }
}

/** Three groups of four as the slip has them, with a place for each digit still to come. */
@Composable
private fun SlipDigits(digits: String, of: Int) {
    val says = stringResource(R.string.slip_so_far, digits.chunked(GROUP).joinToString(" "))
    FlowRow(Modifier.fillMaxWidth().clearAndSetSemantics { contentDescription = says }, Arrangement.spacedBy(16.dp), Arrangement.spacedBy(12.dp)) {
        for (from in 0 until of step GROUP) Places(digits.drop(from).take(GROUP), GROUP)
    }
}

/** So many digits stand together on the slip. */
private const val GROUP = 4
