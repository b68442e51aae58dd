package app.sumpbook.ui.screen

import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.pluralStringResource
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.DisabledReason
import app.sumpbook.core.Figure
import app.sumpbook.core.Glass
import app.sumpbook.core.GlassScreen
import app.sumpbook.core.How
import app.sumpbook.core.ItemFigure
import app.sumpbook.core.LevelNow
import app.sumpbook.core.MainAct
import app.sumpbook.core.keyOfLevel
import app.sumpbook.ui.control.GlassSteps
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.SightGlass
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.seenAs

/** The level as it is given, in words. */
data class LevelView(val record: GlassScreen, val words: String?, val level: String)

/** A level of a unit's glass against its middle. */
fun Reader.levelView(unit: String, given: Glass?): LevelView {
    val record = phone.glass(unit, given, null)
    val key = keyOfLevel(record.level)
    val words = when (val level = record.level) {
        is LevelNow.Under -> words(key, "percent" to level.v1.toInt())
        is LevelNow.Over -> words(key, "percent" to level.v1.toInt())
        else -> words(key)
    }
    val rose = if (record.roseWithoutAPour) words("level-rose") else null
    return LevelView(record, listOfNotNull(words, rose).joinToString(". "), given?.let(::glass).orEmpty())
}

/** The stop at the sight glass: the level by one drag, and one tap for it and for the lines beside it. */
@Composable
fun LevelStop(open: OpenStop) {
    val line = open.view.lines.firstOrNull { it.row.answer == null && it.row.figure?.unit == "%" }
    var given by remember { mutableStateOf<Glass?>(null) }
    val shown by seen(open.unit, given) { levelView(open.unit, given) }
    val level = (shown as? Told.Got)?.it
    val waits = open.view.record.main.whyNot.let { it != null && it !is DisabledReason.FigureMissing }
    val main: @Composable () -> Unit = {
        if (line != null && !waits && given == null) MainPress(stringResource(R.string.glass_drag), stringResource(R.string.glass_drag), whyAbove = false) {}
        else if (line == null || waits || level == null || given == null || level.record.given != given) MainOfStop(open)
        else MainPress(levelAndRest(level.level, open.view.lines.count { it.row.answer == null } - 1)) { keep(open, line, level) }
    }
    val other: (@Composable () -> Unit)? = line?.let { { SecondaryButton(stringResource(R.string.glass_other)) { open.defect(it) } } }
    StopFrame(open, main, other) { hints ->
        if (line != null && level != null) {
            val middle = level.record.middle.let { it.low.toInt()..it.high.toInt() }
            SightGlass(given, middle, Modifier.seenAs(line.row.id, open.rows)) { given = it }
            GlassSteps(given) { given = it }
            if (given != null) level.words?.let { Strip(it) }
        }
        // The drawing is the line: what cannot be given by it is one tap further.
        open.view.lines.filter { it != line || level == null }.forEach { LineOf(it, open, hints) }
    }
}

@Composable
private fun levelAndRest(level: String, rest: Int): String =
    if (rest == 0) stringResource(R.string.glass_alone, level) else pluralStringResource(R.plurals.glass_and_rest, rest, level, rest)

/** The level, then the lines beside it, then on. */
private fun keep(open: OpenStop, line: LineWords, level: LevelView) = open.answerThenGoOn {
    phone.answerLine(open.draft, answer(line, level.record))
    val next = phone.stop(open.draft, open.view.label, open.rows.whole.toList(), UInt.MAX_VALUE)?.main?.act
    if (next !is MainAct.NextStop) phone.okTogether(open.draft, open.view.label, open.onScreenMs())
}

/** A level the checklist has a word for is a finding; any other is a figure of a line that is OK. */
private fun answer(line: LineWords, record: GlassScreen): Answer {
    val percent = (record.given as? Glass.Percent)?.v1?.toLong()
    val figures = percent?.let { listOf(ItemFigure(Figure(it, 0u, "%"), How.ASKED)) }.orEmpty()
    val kind = if (record.word == null) AnswerKind.OK else AnswerKind.DEFECT
    return Answer(item = line.row.item, place = line.row.place, answer = kind, word = record.word, figures = figures)
}
