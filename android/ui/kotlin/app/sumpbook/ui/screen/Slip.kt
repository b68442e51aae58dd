package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.DefectName
import app.sumpbook.core.DefectNow
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalType

/** A lock that a slip may speak of. */
private data class Locked(val name: DefectName, val title: String)

private fun Reader.lockedBy(unit: String): Pair<String, List<Locked>> {
    val record = phone.lastReport(unit, emptyList())
    val rows = record.defects.filter { it.state == DefectNow.OPEN && it.locks.isNotEmpty() }
    // A row's id begins with the entry of the first finding.
    return record.door to rows.map { Locked(DefectName(it.id.substringBefore('/'), it.item, it.place), item(it.item, it.place)) }
}

/** The code of a certificate's slip, typed where there is no signal. */
@Composable
fun Slip(unit: String, signer: Signer) {
    val back = LocalBackStack.current
    val act = rememberAct()
    var digits by rememberSaveable { mutableStateOf("") }
    var which by rememberSaveable { mutableStateOf(0) }
    val shown by seen(unit) { lockedBy(unit) }
    val (door, locks) = (shown as? Told.Got)?.it ?: ("" to emptyList())
    val chosen = locks.getOrNull(which)
    val whyNot = when {
        chosen == null -> stringResource(R.string.nothing_locked)
        digits.length < SLIP_DIGITS -> stringResource(R.string.slip_digits_left, SLIP_DIGITS - digits.length)
        else -> null
    }
    ScreenFrame(
        header = { DoorHeader(door, stringResource(R.string.slip_code)) { back.back() } },
        strips = { act.refused?.let { Strip(sentence(it), heavy = true) } },
        main = {
            MainPress(stringResource(R.string.slip_take), whyNot) {
                chosen?.let { act.now({ phone.acceptSlip(digits, unit, it.name, signer.person) }) { back.back() } }
            }
        },
    ) {
        if (locks.size > 1) Chips { locks.forEachIndexed { n, lock -> Chip(lock.title, n == which) { which = n } } }
        else chosen?.let { Text(it.title, style = LocalType.current.line) }
        Text(digits.chunked(4).joinToString(" "), style = LocalType.current.figure)
        Keypad({ if (digits.length < SLIP_DIGITS) digits += it }, { digits = digits.dropLast(1) })
    }
}

/** A slip's code. */
private const val SLIP_DIGITS = 12
