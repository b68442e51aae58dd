package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import app.sumpbook.R
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Severity
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.control.WordsField
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.capital

/** What is wrong with a line of the walk: cheaper than hiding it. A figure that was read there goes along. */
@Composable
fun Defect(unit: String, draft: String, stop: String, line: String, figure: String = "") {
    val back = LocalBackStack.current
    val act = rememberAct()
    var read by rememberSaveable { mutableStateOf(figure) }
    var giving by rememberSaveable { mutableStateOf(false) }
    val shown by seen(unit, draft, stop, line, read) { defectView(unit, draft, stop, line, figureOf(read)) }
    val told = shown ?: return
    val view = (told as? Told.Got)?.it
        ?: return Refused((told as? Told.Refused)?.let { sentence(it.why) } ?: stringResource(R.string.no_such_line)) { back.back() }
    val refused = act.refused?.let { sentence(it) }
    val offered = view.offered
    val keep = { answer: Answer -> act.now({ phone.answerLine(draft, answer) }) { back.back() } }
    if (giving && offered != null) {
        GiveFigure(unit, view, offered, refused, { giving = false }, { keep(okWith(view.line.row, it)) }) {
            read = lineOf(it)
            giving = false
        }
    } else {
        val again = LookAgain(
            takeBack = if (view.mine) ({ act.now({ phone.takeBackAnswer(draft, line) }) { back.back() } }) else null,
            ok = if (view.byOther) ({ keep(Answer(item = view.line.row.item, place = view.line.row.place, answer = AnswerKind.OK)) }) else null,
        )
        DefectForm(view, refused, { back.back() }, giveFigure = offered?.let { { giving = true } }, again = again, keep = keep)
    }
}

/** What can be done about an answer that stands already; none of it where there is none. */
class LookAgain(val takeBack: (() -> Unit)? = null, val ok: (() -> Unit)? = null)

/**
 * The form of a defect, wherever it is told.
 *
 * @param other whether it may be answered otherwise too: could not check, no such part
 * @param again takes back what stands, or looks at it again
 * @param giveFigure opens the keypad, where the line offers to take a figure
 */
@Composable
fun DefectForm(
    view: DefectView,
    refused: String?,
    goBack: () -> Unit,
    other: Boolean = true,
    giveFigure: (() -> Unit)? = null,
    again: LookAgain = LookAgain(),
    keep: (Answer) -> Unit,
) {
    var kind by rememberSaveable { mutableStateOf(AnswerKind.DEFECT) }
    var word by rememberSaveable { mutableStateOf<String?>(null) }
    var side by rememberSaveable { mutableStateOf<String?>(null) }
    var words by rememberSaveable { mutableStateOf("") }
    var wordy by rememberSaveable { mutableStateOf(false) }
    var raising by rememberSaveable { mutableStateOf(false) }
    var raised by rememberSaveable { mutableStateOf<Severity?>(null) }
    var photos by rememberSaveable { mutableStateOf(emptyList<String>()) }
    val noise = rememberSoundTold(view.line.row.answer?.sound?.takeIf { view.mine })
    val chosen = view.choices.firstOrNull { it.word == word }
    val defect = kind == AnswerKind.DEFECT
    val locks = chosen?.raises?.firstOrNull { it.first == raised }?.second ?: chosen?.locks.orEmpty()
    ScreenFrame(
        header = { DoorHeader(view.door, view.line.name, goBack = goBack) },
        strips = {
            refused?.let { Strip(it, heavy = true) }
            view.over?.let { Strip(it) }
            // What stands for the line now, and whose it is.
            view.line.said?.let { Strip(it) }
        },
        secondary = {
            if (!defect) SecondaryButton(stringResource(R.string.defect_after_all)) { kind = AnswerKind.DEFECT }
            else {
                again.takeBack?.let { SecondaryButton(stringResource(R.string.take_back), onPress = it) }
                again.ok?.let { SecondaryButton(stringResource(R.string.looked_again_ok), onPress = it) }
                if (giveFigure != null) SecondaryButton(stringResource(R.string.figure_give), onPress = giveFigure)
                if (!wordy) SecondaryButton(stringResource(R.string.defect_words)) { wordy = true }
                if (!chosen?.raises.isNullOrEmpty() && !raising) SecondaryButton(stringResource(R.string.defect_raise)) { raising = true }
                if (other) {
                    SecondaryButton(capital(view.couldNotCheck)) { kind = AnswerKind.COULD_NOT_CHECK }
                    SecondaryButton(capital(view.notFitted)) { kind = AnswerKind.NOT_FITTED }
                }
            }
        },
        main = {
            val ends = noise.ends
            if (ends != null) MainPress(ends.first) { ends.second() }
            else Keep(view, kind, chosen, words) {
                // For the blink until its end stands there: kept now, the sound would be lost.
                if (!noise.recording) keep(view.answer(kind, word.takeIf { defect }, side.takeIf { defect }, words, raised.takeIf { defect }).copy(photos = photos, sound = noise.sound.takeIf { defect }))
            }
        },
    ) {
        if (!defect) {
            Text(capital(if (kind == AnswerKind.NOT_FITTED) view.notFitted else view.couldNotCheck), Modifier.semantics { heading() }, style = LocalType.current.heading)
            WordsField(stringResource(R.string.reason), words) { words = it }
            return@ScreenFrame
        }
        view.open?.let { (open, since) ->
            Strip(since)
            view.choices.firstOrNull { it.word == open }?.let {
                SecondaryButton(stringResource(R.string.still_so, it.words)) { keep(view.answer(AnswerKind.DEFECT, open, null, "", null)) }
            }
        }
        Asked(stringResource(R.string.defect_what), view.choices.map { it.word to it.words }, word) {
            word = it
            raised = null
        }
        if (view.sides.isNotEmpty()) Asked(stringResource(R.string.defect_where), view.sides, side) { side = it }
        if (chosen != null) Strip(locksUntilCertified(locks) ?: stringResource(R.string.defect_locks_nothing), heavy = locks.isNotEmpty())
        if (raising) {
            Text(stringResource(R.string.defect_raise_to), style = LocalType.current.line)
            Chips { chosen?.raises?.forEach { (severity, parts) -> Chip(partsTogether(parts), raised == severity) { raised = severity } } }
        }
        if (wordy || word == OTHER) WordsField(stringResource(R.string.defect_own_words), words) { words = it }
        PhotoPart(photos) { photos = it }
        SoundPart(noise)
    }
}

@Composable
private fun Keep(view: DefectView, kind: AnswerKind, chosen: WordChoice?, words: String, keep: () -> Unit) {
    val whyNot = when {
        kind != AnswerKind.DEFECT -> if (words.isBlank()) stringResource(R.string.reason_first) else null
        chosen == null -> stringResource(R.string.defect_word_first)
        chosen.word == OTHER && words.isBlank() -> stringResource(R.string.defect_own_words_first)
        else -> null
    }
    val label = when (kind) {
        AnswerKind.COULD_NOT_CHECK -> stringResource(R.string.keep_as, view.couldNotCheck)
        AnswerKind.NOT_FITTED -> stringResource(R.string.keep_as, view.notFitted)
        AnswerKind.OK, AnswerKind.DEFECT -> stringResource(R.string.defect_keep)
    }
    MainPress(label, whyNot, onPress = keep)
}

/** A question with one answer of several. */
@Composable
fun ColumnScope.Asked(question: String, answers: List<Pair<String, String>>, chosen: String?, choose: (String) -> Unit) {
    Text(question, Modifier.semantics { heading() }, style = LocalType.current.line)
    Chips { answers.forEach { (key, words) -> Chip(words, key == chosen) { choose(key) } } }
}

/** The word that every item has last: it says nothing without words of one's own. */
private const val OTHER = "other"
