package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.key
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.MovableRow
import app.sumpbook.core.Said
import app.sumpbook.core.Signed
import app.sumpbook.core.UnitHere
import app.sumpbook.ui.control.Line
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
import app.sumpbook.ui.words.hours
import app.sumpbook.ui.words.volume

/** An entry that can be moved, in words. */
private data class Movable(val id: String, val what: String, val says: String?)

/** What of this unit's entries can be moved, and where to. */
private data class OtherUnitView(val door: String, val rows: List<Movable>, val units: List<UnitHere>, val by: SignedBy)

private fun Reader.otherUnitView(unit: String, signer: Signer): OtherUnitView {
    val record = phone.otherUnit(unit, signer.person, DAYS_BACK)
    return OtherUnitView(record.door, record.rows.map(::movable), fleet.units.filter { it.id != unit }, signedBy(signer))
}

private fun Reader.movable(row: MovableRow) = Movable(
    id = row.id,
    what = "${words("kind-${row.kind}")}, ${moments.at(row.at)}",
    says = saysWords(row).joinToString(", ").ifEmpty { null },
)

/** What an entry says, part by part. */
fun Reader.saysWords(row: MovableRow): List<String> = listOfNotNull(
    row.fluid?.let(::fluidWords),
    row.volumes.joinToString(" + ") { volume(it, way.metric) }.ifEmpty { null },
    row.hours?.let { "${hours(it)} h" },
    row.glass?.let(::glass),
    row.words,
)

/** This belongs to another unit: pick the entry, pick the unit, sign. It is void here and stands anew there; both are seen. */
@Composable
fun OtherUnit(unit: String, signer: Signer) {
    val back = LocalBackStack.current
    val act = rememberAct()
    val entry = rememberEntryId()
    var picked by rememberSaveable { mutableStateOf<String?>(null) }
    var to by rememberSaveable { mutableStateOf<String?>(null) }
    val shown by seen(unit, signer) { otherUnitView(unit, signer) }
    val told = shown ?: return
    val view = (told as? Told.Got)?.it ?: return Refused((told as? Told.Refused)?.let { sentence(it.why) }.orEmpty()) { back.back() }
    val moved = view.rows.firstOrNull { it.id == picked }
    val door = view.units.firstOrNull { it.id == to }?.door
    val what = stringResource(R.string.other_unit)
    val done = stringResource(R.string.other_unit_moved, door.orEmpty())
    // Another entry, or another unit, is another signature.
    val signing = key(picked, to, entry) {
        rememberSigning(signer, what, act, { signed -> moves(unit, signer, entry, picked, to, signed) }) {
            back.unit(unit)
            back.said = done
        }
    }
    val signs = moved != null && door != null
    ScreenFrame(
        header = { DoorHeader(view.door, what) { if (to != null) to = null else if (picked != null) picked = null else back.back() } },
        strips = {
            act.refused?.let { Strip(sentence(it), heavy = true) }
            if (signs) Strip(stringResource(R.string.other_unit_means, view.door, door.orEmpty()))
        },
        secondary = if (signs && view.by.trainers.isEmpty()) ({ WithoutPin(signing, view.by) }) else null,
        main = if (!signs) null else ({
            val sign = stringResource(R.string.sign_as, view.by.own.name)
            MainPress(signLabel(signing, view.by, sign), pinWhyNot(signing, view.by)) { signing.give(signing.asked(view.by)) }
        }),
    ) {
        when {
            moved == null -> Pick(view.rows) { picked = it }
            door == null -> {
                Text(listOfNotNull(moved.what, moved.says).joinToString(": "), style = LocalType.current.line)
                Text(stringResource(R.string.other_unit_which), style = LocalType.current.heading)
                view.units.forEach { one -> Line(one.door) { to = one.id } }
            }
            else -> {
                Line(moved.what, said = moved.says)
                if (view.by.trainers.isEmpty()) PinPart(signing, view.by) else LearnsWith(view.by, back::learnsWith)
            }
        }
    }
}

private fun Reader.moves(unit: String, signer: Signer, entry: String?, picked: String?, to: String?, signed: Signed) {
    if (picked == null || to == null) return
    val said = Said(
        unit = unit, person = signer.person, id = entry, trainer = signed.trainer,
        pinGiven = signed.pinGiven, trainerPinGiven = signed.trainerPinGiven,
    )
    phone.belongsTo(said, picked, to)
}

@Composable
private fun ColumnScope.Pick(rows: List<Movable>, pick: (String) -> Unit) {
    if (rows.isEmpty()) Text(stringResource(R.string.other_unit_none), style = LocalType.current.text)
    rows.forEach { row -> Line(row.what, said = row.says) { pick(row.id) } }
    Text(stringResource(R.string.other_unit_walks), style = LocalType.current.help)
}

/** A week and a day: what is noticed later goes to the shop. */
private val DAYS_BACK: UShort = 8u
