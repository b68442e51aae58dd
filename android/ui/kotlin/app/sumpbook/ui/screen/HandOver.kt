package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.collectAsState
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.pluralStringResource
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.FileTaken
import app.sumpbook.core.Place.ON_PHONE
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Act
import app.sumpbook.ui.desk.Files
import app.sumpbook.ui.desk.LocalFiles
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.fileSize
import java.time.Instant
import java.time.ZoneId
import java.time.format.DateTimeFormatter
import kotlinx.coroutines.launch

/** What is only here, for a file: how much, and since when. */
private data class OnlyHere(val entries: Int, val photos: Int, val since: String?, val fleet: String, val fileName: String)

private fun Reader.onlyHere(): OnlyHere {
    val record = phone.whereItIs(FAR_BACK.toUShort())
    val oldest = record.days.flatMap { it.rows }.filter { it.place == ON_PHONE }.minOfOrNull { it.at }
    return OnlyHere(record.counts.onPhone.toInt(), record.photos.onPhone.toInt(), oldest?.let(moments::at), fleet.name, fileName())
}

/** What became of a file, with the core's sentences about what must not go unsaid. */
internal data class Taken(val file: FileTaken, val forged: String?, val placedAgain: String?)

internal fun Reader.takenWords(file: FileTaken) = Taken(
    file = file,
    forged = if (file.forged > 0u) words("error-file-forged", "count" to file.forged, "taken" to file.admitted.toString()) else null,
    placedAgain = if (file.placedAgain > 0u) words("error-placed-again", "count" to file.placedAgain) else null,
)

/** The phone and the moment, so that two files of a day are told apart. */
private fun Reader.fileName(): String {
    val phone = phone.about().device.lowercase().map { if (it.isLetterOrDigit()) it else '-' }.joinToString("")
    val at = DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmm").withZone(ZoneId.of(fleet.zone)).format(Instant.ofEpochMilli(now))
    return "$phone-$at.sumpbook"
}

/** Handing over with no network: a file for the shop or for another phone, and taking one in. */
@Composable
fun HandOver() {
    val shown by seen { onlyHere() }
    val told = shown ?: return
    val here = (told as? Told.Got)?.it
    val back = LocalBackStack.current
    val files = LocalFiles.current
    val act = rememberAct()
    val scope = rememberCoroutineScope()
    var taken by remember { mutableStateOf<Taken?>(null) }
    var said by remember { mutableStateOf<String?>(null) }
    // With nothing new a file is made all the same, once somebody has said so.
    var allTheSame by rememberSaveable { mutableStateOf(false) }
    val asks = here != null && here.entries == 0 && here.photos == 0 && !allTheSame
    val given by remember(files) { files?.given ?: kotlinx.coroutines.flow.MutableStateFlow(null) }.collectAsState()
    val nowhere = stringResource(R.string.no_way_to_files)
    val made = stringResource(R.string.file_made, SIZE)
    fun take(bytes: ByteArray) = act.now({ takenWords(phone.takeIn(bytes)) }) {
        taken = it
        files?.taken()
    }
    ScreenFrame(
        header = { TitleHeader(stringResource(R.string.hand_over)) { back.back() } },
        strips = {
            if (told is Told.Refused) Strip(sentence(told.why), heavy = true)
            act.refused?.let { Strip(sentence(it), heavy = true) }
            said?.let { Strip(it) }
        },
        secondary = {
            if (given == null) SecondaryButton(stringResource(R.string.take_in_file)) {
                scope.launch { if (files == null) said = nowhere else files.choose()?.let(::take) }
            } else SecondaryButton(stringResource(R.string.leave_file)) { files?.taken() }
        },
        main = {
            val waiting = given
            if (waiting != null) MainPress(stringResource(R.string.take_in_given), if (act.underWay) stringResource(R.string.trying) else null) { take(waiting) }
            else if (asks) MainPress(stringResource(R.string.make_one_all_the_same)) {
                allTheSame = true
            }
            else MainPress(stringResource(R.string.make_file), if (act.underWay) stringResource(R.string.trying) else null) {
                make(act, files, here?.fileName ?: FILE_NAME) { said = if (it != null) made.replace(SIZE, fileSize(it)) else nowhere }
            }
        },
    ) {
        if (given != null) Text(stringResource(R.string.file_was_given), style = LocalType.current.strong)
        if (asks) Text(stringResource(R.string.all_at_shop), style = LocalType.current.strong)
        here?.let { OnlyHerePart(it) }
        taken?.let { TakenPart(it) }
    }
}

/** Makes the file and gives it away: its size, or none where it could not be given. */
private fun make(act: Act, files: Files?, name: String, done: (Int?) -> Unit) {
    act.now({ phone.handOver() }) { made -> act.launch { done(made.bytes.size.takeIf { files?.give(name, made.bytes) == true }) } }
}

@Composable
private fun OnlyHerePart(here: OnlyHere) {
    val entries = pluralStringResource(R.plurals.entries_go, here.entries, here.entries)
    val since = here.since?.let { stringResource(R.string.since_when, it) }
    val photos = if (here.photos > 0) pluralStringResource(R.plurals.photos_stay, here.photos, here.photos) else null
    Section(null, listOfNotNull(listOfNotNull(entries, since).joinToString(", "), photos))
    Section(null, listOf(stringResource(R.string.file_is_for, here.fleet), stringResource(R.string.file_stays), stringResource(R.string.file_not_secret)))
}

/** What became of a file that was taken in. */
@Composable
private fun TakenPart(said: Taken) {
    val taken = said.file
    val lines = listOfNotNull(
        stringResource(R.string.taken_counts, taken.admitted.toInt(), taken.known.toInt()),
        if (taken.waiting > 0u) pluralStringResource(R.plurals.taken_waiting, taken.waiting.toInt(), taken.waiting.toInt()) else null,
        said.forged,
        (taken.refused - taken.forged).toInt().takeIf { it > 0 }?.let { pluralStringResource(R.plurals.taken_refused, it, it) },
        said.placedAgain,
        if (taken.receipt) stringResource(R.string.taken_receipt) else null,
        taken.endedAfter?.let { after -> stringResource(R.string.taken_ended, after.toLong(), taken.endedOf?.toString() ?: "?") },
        if (taken.shopSetBack) stringResource(R.string.shop_set_back) else null,
        if (taken.twoShops) stringResource(R.string.two_shops) else null,
    )
    Section(stringResource(R.string.taken_in), lines)
}

/** Stands in a sentence where the size of the file will. */
private const val SIZE = "{size}"
private const val FAR_BACK = 60
private const val FILE_NAME = "handed.sumpbook"
