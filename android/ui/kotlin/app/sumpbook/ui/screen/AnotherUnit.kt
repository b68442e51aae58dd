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
import app.sumpbook.ui.desk.Told
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
    var tag by remember { mutableStateOf<String?>(null) }
    fun open(unit: String) = leaving.to(unit, left) { back.goInstead(Place.Unit(unit)) }
    // The core knows no code of a door tag: a tag says its door number.
    val scan = rememberScan { said ->
        val read = units.firstOrNull { it.door.equals(said.trim(), ignoreCase = true) }
        tag = if (read == null) said.trim().take(MOST_OF_A_TAG) else null
        read?.let { open(it.id) }
    }
    val found = units.filter { unit -> digits in unit.door.filter(Char::isDigit) }
    ScreenFrame(
        header = { DoorHeader(digits, stringResource(R.string.another_unit)) { back.back() } },
        strips = {
            (shown as? Told.Refused)?.let { Strip(sentence(it.why)) }
            LeavingStrip(leaving, left)
            ScanStrip(scan)
            tag?.let { Strip(stringResource(R.string.no_unit_of_tag, it), heavy = true) }
        },
        secondary = scan?.let { { SecondaryButton(stringResource(R.string.scan_door_tag)) { it.now() } } },
        main = { Keypad({ digits += it }, { digits = digits.dropLast(1) }) },
    ) {
        if (found.isEmpty()) Text(stringResource(R.string.no_such_unit), style = LocalType.current.text)
        found.take(MOST).forEach { unit -> Line(unit.door) { open(unit.id) } }
        if (found.size > MOST) Text(stringResource(R.string.type_more_digits, found.size - MOST), style = LocalType.current.text)
    }
}

/** A door number is short: of anything else the beginning tells what it is. */
private const val MOST_OF_A_TAG = 40

/** More than so many are found by one digit more. */
private const val MOST = 24
