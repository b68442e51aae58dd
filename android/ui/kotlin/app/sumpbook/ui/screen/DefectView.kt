package app.sumpbook.ui.screen

import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.How
import app.sumpbook.core.ItemFigure
import app.sumpbook.core.LineRow
import app.sumpbook.core.Severity
import app.sumpbook.ui.desk.Reader

/** A word for what is wrong, and the parts it locks. */
data class WordChoice(val word: String, val words: String, val locks: List<String>, val raises: List<Pair<Severity, List<String>>>)

/** A line whose defect is told, with its words. */
data class DefectView(
    val door: String,
    val line: LineWords,
    val choices: List<WordChoice>,
    /** Sides it may be on, where one look covers several: key and word. */
    val sides: List<Pair<String, String>>,
    /** The word of a defect that is open here already, and since when, as a sentence. */
    val open: Pair<String, String>?,
    val couldNotCheck: String,
    val notFitted: String,
    /** The figure that was read there, and what the rule says of it. */
    val figures: List<ItemFigure> = emptyList(),
    val over: String? = null,
    /** A figure that may be given instead of a defect, and the limits it is held against. */
    val offered: Offered? = null,
    val limits: List<String> = emptyList(),
) {
    /** An answer of this walk's own stands for the line. */
    val mine: Boolean get() = line.row.answer?.let { it.at == null } == true

    /** Somebody else has answered it, in this walk. */
    val byOther: Boolean get() = line.row.answer?.at != null

    /** The answer. A [side] is the place of a line that has none of its own; else it stands in the words. */
    fun answer(kind: AnswerKind, word: String?, side: String?, words: String, raised: Severity?): Answer {
        val own = line.row.place
        val said = sides.firstOrNull { it.first == side && own != null }?.second
        return Answer(
            item = line.row.item,
            place = own ?: side,
            answer = kind,
            word = word,
            severity = raised,
            figures = figures,
            words = listOfNotNull(said, words.trim().ifEmpty { null }).joinToString(", ").ifEmpty { null },
        )
    }
}

/** A line of a stop, to tell its defect, with the [figure] that was read there; none when the stop has no such line. */
fun Reader.defectView(unit: String, draft: String, stop: String, line: String, figure: ItemFigure?): DefectView? {
    val screen = phone.stop(draft, stop, emptyList(), 0u) ?: return null
    val row = screen.lines.firstOrNull { it.id == line } ?: return null
    val view = defectView(screen.door, row).copy(offered = offered(row.figure)?.readIn(way.metric), limits = limits(unit, row))
    if (figure == null) return view
    // What was measured over its limit is a defect; what was offered is only held against it.
    val said = if (figure.how == How.OFFERED) verdicts(unit, row, figure).said.firstOrNull() else overLimit(unit, row, figure)
    return view.copy(figures = listOf(figure), over = said)
}

/** A line, to tell its defect. */
fun Reader.defectView(door: String, row: LineRow): DefectView = DefectView(
    door = door,
    line = lineWords(row),
    choices = row.words.map { WordChoice(it.word, choice(it.word), lockedParts(it.severity), it.raises.map { to -> to to lockedParts(to) }) },
    sides = row.sides.map { side -> side.name.lowercase().let { it to words("side-$it") } },
    open = row.openWord?.let { word -> openSince(row)?.let { word to it } },
    couldNotCheck = words("answer-could-not-check"),
    notFitted = words("answer-not-fitted"),
)
