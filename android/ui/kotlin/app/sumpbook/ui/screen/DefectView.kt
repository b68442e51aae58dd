package app.sumpbook.ui.screen

import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.DefectNow
import app.sumpbook.core.Figure
import app.sumpbook.core.How
import app.sumpbook.core.ItemFigure
import app.sumpbook.core.LineRow
import app.sumpbook.core.Severity
import app.sumpbook.ui.desk.Reader

/** A word for what is wrong, and the parts it locks. */
data class WordChoice(val word: String, val severity: Severity, val words: String, val locks: List<String>)

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
    val raises: List<Pair<Severity, List<String>>>,
    /** The figure that was read there, and what the rule says of it. */
    val figures: List<ItemFigure> = emptyList(),
    val over: String? = null,
) {
    /**
     * The answer. A side stands in the words: the line that was looked at is the whole of it, and only so it is
     * answered.
     */
    fun answer(kind: AnswerKind, word: String?, side: String?, words: String, raised: Severity?): Answer = Answer(
        item = line.row.item,
        place = line.row.place,
        answer = kind,
        word = word,
        severity = raised,
        figures = figures,
        words = listOfNotNull(side, words.trim().ifEmpty { null }).joinToString(", ").ifEmpty { null },
    )
}

/** A line of a stop, to tell its defect; none when the stop has no such line. */
fun Reader.defectView(unit: String, draft: String, stop: String, line: String, psi: Long? = null): DefectView? {
    val screen = phone.stop(draft, stop, emptyList(), 0u) ?: return null
    val row = screen.lines.firstOrNull { it.id == line } ?: return null
    val view = defectView(screen.door, row, openWord(unit, row))
    if (psi == null) return view
    val read = drop(row, psi)
    return view.copy(figures = read.figures, over = overLimit(unit, read))
}

/** The answer of a drop: what was read, chosen by one tap. */
fun drop(row: LineRow, psi: Long, onScreenMs: UInt? = null): Answer = Answer(
    item = row.item,
    place = row.place,
    answer = AnswerKind.OK,
    figures = listOf(ItemFigure(Figure(psi, 0u, row.figure?.unit ?: "psi"), How.CHOSEN)),
    onScreenMs = onScreenMs,
)

/** What the rule the shop goes by says of a figure that breaks it; none when it is kept. */
private fun Reader.overLimit(unit: String, answer: Answer): String? {
    val broken = phone.rulesSaid(unit, answer).rows.firstOrNull { it.goesBy && it.keeps == false } ?: return null
    val limit = words("rule-is-${broken.compares}", "limit" to broken.limit.orEmpty())
    return words("figure-over", "figure" to broken.figure, "said" to words("rule-not-kept", "limit" to limit, "rule" to broken.rule))
}

/** A line, to tell its defect. */
fun Reader.defectView(door: String, row: LineRow, open: Pair<String, String>?): DefectView = DefectView(
    door = door,
    line = lineWords(row),
    choices = row.words.map { WordChoice(it.word, it.severity, choice(it.word), lockedParts(it.severity)) },
    sides = row.sides.map { side -> side.name.lowercase().let { it to words("side-$it") } },
    open = open,
    couldNotCheck = words("answer-could-not-check"),
    notFitted = words("answer-not-fitted"),
    raises = listOf(Severity.ROAD, Severity.AIR, Severity.ROAD_AND_AIR).map { it to lockedParts(it) },
)

private fun Reader.openWord(unit: String, row: LineRow): Pair<String, String>? {
    val since = row.openSince ?: return null
    val defect = phone.lastReport(unit, emptyList()).defects
        .firstOrNull { it.item == row.item && it.place == row.place && it.state != DefectNow.CLOSED }
    val word = defect?.said?.firstNotNullOfOrNull { it.word } ?: return null
    return word to words("stop-open-since", "when" to moments.at(since))
}
