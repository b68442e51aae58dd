package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.EndOfDaySaid
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.control.WordsField
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.LocalSettings
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalType

/** What can have happened. */
private enum class What(val words: Int) {
    HURT(R.string.happened_hurt),
    SPILL(R.string.happened_spill),
    HIT(R.string.happened_hit),
    OTHER(R.string.happened_other),
}

/**
 * Keeps what happened among the words of this person's end-of-day report for the unit; begins one when there is none. It
 * is durable at once, and goes to the shop with that report.
 */
private fun Reader.keepHappened(unit: String, person: String, words: String): String {
    val begun = phone.drafts().drafts.firstOrNull { it.kind == END_OF_DAY && it.unit == unit && it.person == person }?.id
    val draft = begun ?: phone.beginEndOfDay(unit, person)
    val before = phone.endOfDay(draft).toNext
    phone.sayEndOfDay(draft, EndOfDaySaid(toNext = listOfNotNull(before, words).joinToString("\n")))
    return draft
}

private fun Reader.doorAndTime(unit: String) = fleet.units.firstOrNull { it.id == unit }?.door.orEmpty() to moments.timeNow()

/** Something happened: help first, then what, when, where, how much, whom. */
@Composable
fun Happened(unit: String, signer: Signer) {
    val back = LocalBackStack.current
    val handset = LocalDesk.current.handset
    val shop = LocalSettings.current?.now?.value?.shopNumber.orEmpty()
    val act = rememberAct()
    val shown by seen(unit) { doorAndTime(unit) }
    val (door, now) = (shown as? Told.Got)?.it ?: ("" to "")
    var what by rememberSaveable { mutableStateOf<What?>(null) }
    var at by rememberSaveable { mutableStateOf("") }
    var place by rememberSaveable { mutableStateOf("") }
    var much by rememberSaveable { mutableStateOf("") }
    var whom by rememberSaveable { mutableStateOf("") }
    val kept = stringResource(R.string.happened_kept)
    val chosen = what?.let { stringResource(it.words) }
    val lines = listOfNotNull(
        "${stringResource(R.string.it_happened)}, ${at.ifEmpty { now }}: ${chosen.orEmpty()}",
        place.ifEmpty { null }?.let { "${stringResource(R.string.happened_where)}: $it" },
        much.ifEmpty { null }?.let { "${stringResource(R.string.happened_much)}: $it" },
        whom.ifEmpty { null }?.let { "${stringResource(R.string.happened_whom)}: $it" },
    )
    ScreenFrame(
        header = { DoorHeader(door, stringResource(R.string.it_happened)) { back.back() } },
        strips = {
            Strip(stringResource(R.string.hurt_call_first), heavy = true)
            Strip(stringResource(R.string.under_skin))
            act.refused?.let { Strip(sentence(it), heavy = true) }
        },
        secondary = {
            SecondaryButton(stringResource(R.string.call_emergency)) { handset.call(EMERGENCY) }
            if (shop.isNotEmpty()) SecondaryButton(stringResource(R.string.call_the_shop)) { handset.call(shop) }
        },
        main = {
            MainPress(stringResource(R.string.keep_happened), if (what == null) stringResource(R.string.happened_what_first) else null) {
                act.now({ keepHappened(unit, signer.person, lines.joinToString(". ")) }) {
                    back.unit(unit)
                    back.said = kept
                }
            }
        },
    ) {
        Chips { What.entries.forEach { one -> Chip(stringResource(one.words), what == one) { what = one } } }
        WordsField(stringResource(R.string.happened_when, now), at) { at = it }
        WordsField(stringResource(R.string.happened_where), place) { place = it }
        WordsField(stringResource(R.string.happened_much), much) { much = it }
        WordsField(stringResource(R.string.happened_whom), whom) { whom = it }
        Text(stringResource(R.string.happened_goes_with), style = LocalType.current.help)
    }
}

private const val END_OF_DAY = "end-of-day"

/** The emergency number of the United States, Canada and Mexico. */
private const val EMERGENCY = "911"
