package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.UnitHere
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalType

/** A unit that is not one of one's own, found by the digits of its door number. */
@Composable
fun AnotherUnit(signer: Signer) {
    val back = LocalBackStack.current
    var digits by rememberSaveable { mutableStateOf("") }
    val shown by seen(signer.person) { fleet.units to walkLeft(signer.person) }
    val (units, left) = (shown as? Told.Got)?.it ?: (emptyList<UnitHere>() to null)
    val leaving = rememberLeaving()
    val act = rememberAct()
    var no by remember { mutableStateOf<String?>(null) }
    fun open(unit: String) = leaving.to(unit, left) { back.goInstead(Place.Unit(unit)) }
    val scan = rememberScan { text ->
        act.now({ doorScanned(text) }) { read ->
            no = read.no
            read.unit?.let(::open)
        }
    }
    val found = units.filter { unit -> digits in unit.door.filter(Char::isDigit) }
    ScreenFrame(
        header = { DoorHeader(digits, stringResource(R.string.another_unit)) { back.back() } },
        strips = {
            (shown as? Told.Refused)?.let { Strip(sentence(it.why)) }
            LeavingStrip(leaving, left)
            ScanStrip(scan)
            act.refused?.let { Strip(sentence(it), heavy = true) }
            no?.let { Strip(it, heavy = true) }
        },
        secondary = scan?.let { { SecondaryButton(stringResource(R.string.scan_door_tag)) { it.now() } } },
        main = { Keypad({ digits += it }, { digits = digits.dropLast(1) }) },
    ) {
        if (found.isEmpty()) Text(stringResource(R.string.no_such_unit), style = LocalType.current.text)
        found.take(MOST).forEach { unit -> Line(unit.door) { open(unit.id) } }
        if (found.size > MOST) Text(stringResource(R.string.type_more_digits, found.size - MOST), style = LocalType.current.text)
    }
}

/** What a scanned text means: the unit, or why it is none. */
private data class DoorScanned(val unit: String?, val no: String?)

private fun Reader.doorScanned(text: String): DoorScanned {
    val scanned = phone.doorScan(text)
    return DoorScanned(scanned.unit, scanned.no?.let { words("scan-${it.name.lowercase().replace('_', '-')}", "said" to scanned.says.orEmpty()) })
}

/** More than so many are found by one digit more. */
private const val MOST = 24
