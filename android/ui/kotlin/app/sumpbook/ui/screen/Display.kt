package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.DisabledReason
import app.sumpbook.core.NoteKind
import app.sumpbook.core.Said
import app.sumpbook.core.ShownNote
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.control.WordsField
import app.sumpbook.ui.desk.Act
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalType

/** The display spoke: a new note is written down, or one is answered. */
@Composable
fun Display(unit: String, note: String, signer: Signer) {
    val back = LocalBackStack.current
    val act = rememberAct()
    val entry = rememberEntryId()
    val shown by seen(unit, note) { displayView(unit, note) }
    val told = shown ?: return
    val view = (told as? Told.Got)?.it ?: return Refused((told as? Told.Refused)?.let { sentence(it.why) }.orEmpty()) { back.back() }
    val said = Said(unit = unit, person = signer.person, id = entry, trainer = signer.trainer)
    val of = view.note
    if (of == null) NewNote(view, act, said) else AnswerNote(view, of, act, said)
}

/** What the display shows, as it stands there. */
@Composable
private fun NewNote(view: DisplayView, act: Act, said: Said) {
    val back = LocalBackStack.current
    var kind by rememberSaveable { mutableStateOf<NoteKind?>(null) }
    var asShown by rememberSaveable { mutableStateOf("") }
    var stopped by rememberSaveable { mutableStateOf<Boolean?>(null) }
    var cause by rememberSaveable { mutableStateOf("") }
    var photo by rememberSaveable { mutableStateOf<String?>(null) }
    val whyNot = when {
        kind == null -> stringResource(R.string.display_kind_first)
        asShown.isBlank() -> stringResource(R.string.display_words_first)
        else -> view.whyNot
    }
    ScreenFrame(
        header = { DoorHeader(view.record.door, stringResource(R.string.display_note)) { back.back() } },
        strips = {
            act.refused?.let { Strip(sentence(it), heavy = true) }
            view.stopped?.let { Strip(it, heavy = true) }
        },
        main = {
            MainPress(view.main, whyNot) {
                val what = kind ?: return@MainPress
                act.now({ phone.keepNote(said.noting(cause.takeIf { stopped == true }), ShownNote(what, asShown.trim(), stopped, photo = photo)) }) { back.goInstead(Place.Display(said.unit, it)) }
            }
        },
    ) {
        Asked(stringResource(R.string.display_what), view.kinds.map { it.first.name to it.second }, kind?.name) { kind = NoteKind.valueOf(it) }
        WordsField(stringResource(R.string.display_as_it_stands), asShown) { asShown = it }
        OnePhoto(photo) { photo = it }
        YesOrNo(stringResource(R.string.display_stopped_itself), stopped) { stopped = it }
        if (stopped == true) WordsField(stringResource(R.string.display_cause), cause) { cause = it }
        kind?.let { ShopSays(view, it) }
        view.open.forEach { Line(it.title, under = it.under) { back.go(Place.Display(said.unit, it.row.id)) } }
    }
}

/** A note somebody wrote down: who is told, and that it is gone again. */
@Composable
private fun AnswerNote(view: DisplayView, note: NoteWords, act: Act, by: Said) {
    val back = LocalBackStack.current
    var cause by rememberSaveable { mutableStateOf("") }
    val stopped = note.row.stoppedByItself == true
    val said = by.noting(cause.takeIf { stopped })
    ScreenFrame(
        header = { DoorHeader(view.record.door, stringResource(R.string.display_note)) { back.back() } },
        strips = {
            act.refused?.let { Strip(sentence(it), heavy = true) }
            view.stopped?.let { Strip(it, heavy = true) }
            if (view.record.main.whyNot == DisabledReason.AlreadyTold) view.toldHere?.let { Strip(it) }
        },
        secondary = {
            SecondaryButton(stringResource(R.string.display_only_seen)) { act.now({ phone.acknowledge(said, note.row.id, false) }) { back.back() } }
            if (note.row.gone == null) {
                SecondaryButton(stringResource(R.string.display_gone)) {
                    val gone = ShownNote(note.row.what, note.row.asShown, null, note.row.id)
                    act.now({ phone.keepNote(said, gone) }) { back.back() }
                }
            }
        },
        main = {
            MainPress(view.main, view.whyNot) {
                act.now({
                    phone.acknowledge(said, note.row.id, true)
                    displayView(said.unit, note.row.id).toldHere
                }) { here ->
                    back.back()
                    back.said = here
                }
            }
        },
    ) {
        Section(note.title, listOf(note.under) + note.known)
        if (stopped) WordsField(stringResource(R.string.display_cause), cause) { cause = it }
        ShopSays(view, note.row.what)
    }
}

/** With words of one's own, where there are any: the cause of a stop, one restart after which is no finding. */
private fun Said.noting(words: String?): Said = copy(note = words?.trim()?.ifEmpty { null })

/** The shop's own words of a note; none of ours stand in for them. */
@Composable
private fun ShopSays(view: DisplayView, of: NoteKind) {
    val words = view.shopSays[of]
    Text(stringResource(R.string.display_shop_says), style = LocalType.current.line)
    Text(words ?: view.noWords, style = if (words == null) LocalType.current.text else LocalType.current.strong)
}
