package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.Happened
import app.sumpbook.core.HappenedWhat
import app.sumpbook.core.OnCall
import app.sumpbook.core.Said
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.control.WordsField
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalType
import java.time.Instant
import java.time.temporal.ChronoUnit

/** The unit's door number, whom to call, the time now, and the moments so many minutes ago that are offered, by their time. */
private data class HappenedView(val door: String, val emergency: String, val onCall: List<OnCall>, val now: String, val earlier: List<Pair<String, String>>)

private fun Reader.happenedView(unit: String) = HappenedView(
    door = fleet.units.firstOrNull { it.id == unit }?.door.orEmpty(),
    emergency = fleet.emergency,
    onCall = fleet.onCall,
    now = moments.timeNow(),
    earlier = EARLIER_MINUTES.map { Instant.ofEpochMilli(now).minus(it, ChronoUnit.MINUTES).toString() }.map { it to moments.at(it) },
)

/** What can have happened, in words. */
private fun wordsOf(what: HappenedWhat): Int = when (what) {
    HappenedWhat.HURT -> R.string.happened_hurt
    HappenedWhat.SPILL -> R.string.happened_spill
    HappenedWhat.HIT -> R.string.happened_hit
    HappenedWhat.OTHER -> R.string.happened_other
}

/** Something happened: help first, then what, when, where, how much, whom. */
@Composable
fun Happened(unit: String, signer: Signer) {
    val back = LocalBackStack.current
    val handset = LocalDesk.current.handset
    val act = rememberAct()
    val entry = rememberEntryId()
    val shown by seen(unit) { happenedView(unit) }
    val view = (shown as? Told.Got)?.it
    var what by rememberSaveable { mutableStateOf<HappenedWhat?>(null) }
    // The moment stays as it was offered, however long the form is open.
    var at by rememberSaveable { mutableStateOf<String?>(null) }
    var place by rememberSaveable { mutableStateOf("") }
    var much by rememberSaveable { mutableStateOf("") }
    var whom by rememberSaveable { mutableStateOf("") }
    var photos by rememberSaveable { mutableStateOf(emptyList<String>()) }
    val kept = stringResource(R.string.happened_kept)
    ScreenFrame(
        header = { DoorHeader(view?.door.orEmpty(), stringResource(R.string.it_happened)) { back.back() } },
        strips = {
            view?.let { Strip(stringResource(R.string.hurt_call_first, it.emergency), heavy = true) }
            Strip(stringResource(R.string.under_skin))
            Strip(stringResource(R.string.no_signal_send_someone))
            act.refused?.let { Strip(sentence(it), heavy = true) }
        },
        secondary = {
            view?.let {
                SecondaryButton(stringResource(R.string.call_number, it.emergency)) { handset.call(it.emergency) }
                CallThem(it.onCall)
            }
        },
        main = {
            MainPress(stringResource(R.string.keep_happened)) {
                val told = Happened(what, at, place.told(), much.told(), whom.told(), photos)
                act.now({ phone.keepHappened(Said(unit = unit, person = signer.person, id = entry, trainer = signer.trainer), told) }) {
                    back.unit(unit)
                    back.said = kept
                }
            }
        },
    ) {
        Chips { HappenedWhat.entries.forEach { one -> Chip(stringResource(wordsOf(one)), what == one) { what = one } } }
        WhenPart(view, at) { at = it }
        WordsField(stringResource(R.string.happened_where), place) { place = it }
        WordsField(stringResource(R.string.happened_much), much) { much = it }
        WordsField(stringResource(R.string.happened_whom), whom) { whom = it }
        PhotoPart(photos) { photos = it }
        Text(stringResource(R.string.happened_goes_with), style = LocalType.current.help)
    }
}

/** When it was: now, unless one of the moments before is chosen. */
@Composable
private fun WhenPart(view: HappenedView?, at: String?, choose: (String?) -> Unit) {
    if (view == null) return
    // A moment chosen earlier is no longer among those that are offered now: it stays the chosen one.
    val offered by rememberSaveable { mutableStateOf(view.earlier.flatMap { listOf(it.first, it.second) }) }
    Text(stringResource(R.string.happened_when), style = LocalType.current.line)
    Chips {
        Chip(stringResource(R.string.happened_now, view.now), at == null) { choose(null) }
        offered.chunked(2).forEach { (moment, words) -> Chip(words, at == moment) { choose(moment) } }
    }
}

private fun String.told(): String? = trim().ifEmpty { null }

/** How long ago it may have been: whoever writes it down first called for help. */
private val EARLIER_MINUTES = listOf(15L, 30L, 60L, 120L)
