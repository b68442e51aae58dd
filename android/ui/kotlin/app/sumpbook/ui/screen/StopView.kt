package app.sumpbook.ui.screen

import app.sumpbook.core.AnswerKind
import app.sumpbook.core.HowGiven
import app.sumpbook.core.LineAnswer
import app.sumpbook.core.LineRow
import app.sumpbook.core.MainAct
import app.sumpbook.core.StopMark
import app.sumpbook.core.StopScreen
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.words.figure

/** A line of the walk in words. */
data class LineWords(
    val row: LineRow,
    val name: String,
    val ok: String,
    val look: String,
    val caution: String?,
    val said: String?,
    val note: String?,
    /** Limits of what is measured there. */
    val limits: List<String> = emptyList(),
)

/** How a stop is answered beside its lines: what else stands on its screen. */
enum class StopKind { LINES, HOURS, GLASS, DROP, BUILD_UP }

/** A stop, with its words. */
data class StopView(
    val record: StopScreen,
    val kind: StopKind,
    val title: String,
    /** How far round: "6 / 19". */
    val of: String,
    /** The walk in one sentence. */
    val says: String,
    val engine: String,
    val lines: List<LineWords>,
    val together: List<String>,
    /** What of the unit is locked, since when and why. */
    val locked: List<String>,
    val main: String,
    val whyNot: String?,
) {
    /** What must be seen before the lines: the engine's state; where a figure is asked, its own caution with it or instead. */
    val strip: String
        get() {
            val asked = lines.firstOrNull { it.row.figure?.how == HowGiven.ASKED }?.caution
            return when (kind) {
                StopKind.GLASS -> asked ?: engine
                StopKind.HOURS -> listOfNotNull(engine, asked).joinToString(" ")
                StopKind.LINES, StopKind.DROP, StopKind.BUILD_UP -> engine
            }
        }

    /** What must be known before a hand goes near: each caution once, but for one that stands in the strip. */
    val cautions: List<String> get() = lines.mapNotNull { it.caution }.distinct().filter { it !in strip }

    /** Its lines about fill a screen: what else there is to read waits for a press. */
    val isFull: Boolean get() = lines.size > FEW_LINES

    /** Another label for another stop: what is remembered of one is not of the next. */
    val label: String get() = record.label
}

/** A stop of a walk, with so many rows seen and so long open; an empty [stop]: where the walk stands. */
fun Reader.stopView(unit: String, draft: String, stop: String, whole: Set<String>, openMs: Long): StopView? {
    val record = phone.stop(draft, stop.ifEmpty { null }, whole.toList(), openMs.toUInt()) ?: return null
    return StopView(
        record = record,
        kind = kindOf(record),
        title = words("stop-${record.stop}"),
        of = howFar(record),
        says = says(record),
        engine = listOfNotNull(
            words("engine-${record.engine.name.lowercase().replace('_', '-')}"),
            if (record.chocks) words("chocks-in") else null,
        ).joinToString(" "),
        lines = record.lines.map { row -> lineWords(row).let { if (isMeasured(row)) it.copy(limits = limits(unit, row)) else it } },
        together = record.together.map(::togetherWords),
        locked = record.locked.map { partWords(it).inALine() },
        main = label(record.main, record.door),
        whyNot = record.main.whyNot?.let(::whyNot),
    )
}

/** "TH-01, left side, 6 / 19", then every stop that is not as it should be. */
private fun Reader.says(record: StopScreen): String {
    val here = howFar(record)
    val told = record.marks.withIndex().filter { it.value == StopMark.DEFECT || it.value == StopMark.COULD_NOT_CHECK }
        .joinToString("") { ", ${it.index + 1} ${words("mark-${it.value.name.lowercase().replace('_', '-')}")}" }
    return "${record.door}, ${words("stop-${record.stop}")}, $here$told"
}

/** "6 / 19", by the unit's own walk. */
private fun Reader.howFar(record: StopScreen): String = words("stop-of", "index" to record.index.toString(), "of" to record.of.toString())

/** Formatting only: which control a figure is given by. */
private fun kindOf(record: StopScreen): StopKind {
    val figures = record.lines.mapNotNull { it.figure }
    return when {
        figures.any { it.how == HowGiven.TIMED } -> StopKind.BUILD_UP
        figures.any { it.how == HowGiven.CHOSEN } -> StopKind.DROP
        figures.any { it.how == HowGiven.ASKED && it.unit == "h" } -> StopKind.HOURS
        figures.any { it.how == HowGiven.ASKED && it.unit == "%" } -> StopKind.GLASS
        else -> StopKind.LINES
    }
}

/** Formatting only: what is measured here, with its limit beside it. */
private fun isMeasured(row: LineRow): Boolean = row.figure?.how.let { it == HowGiven.TIMED || it == HowGiven.CHOSEN }

/** A line in words. */
fun Reader.lineWords(row: LineRow): LineWords {
    return LineWords(
        row = row,
        name = item(row.item, row.place),
        ok = words("item-${row.item}.ok"),
        look = words("item-${row.item}.look"),
        caution = row.caution?.let { words("caution-$it") },
        said = row.answer?.let(::answerWords),
        note = if (row.answer == null) openSince(row) else null,
    )
}

/** Since when a defect of the line is open, and that its part is on hold where it waits for one; none where nothing is open. */
fun Reader.openSince(row: LineRow): String? {
    val key = if (row.waitsFor == null) "stop-open-since" else "stop-open-since-part"
    return row.openSince?.let { words(key, "when" to moments.at(it)) }
}

private fun Reader.answerWords(answer: LineAnswer): String {
    val what = when (answer.answer) {
        AnswerKind.OK -> words("answer-ok")
        AnswerKind.DEFECT -> answer.word?.let(::choice) ?: words("answer-defect")
        AnswerKind.NOT_FITTED -> words("answer-not-fitted")
        AnswerKind.COULD_NOT_CHECK -> words("answer-could-not-check")
    }
    val figures = answer.figures.joinToString { figure(it.figure) }
    val by = answer.at?.let { words("stop-by-other", "by" to answer.by.orEmpty(), "when" to moments.at(it)) }
    return listOfNotNull(what, figures.ifEmpty { null }, by).joinToString(", ")
}

/** Where the walk goes from a stop whose lines are all answered; none: lines are open. */
fun Reader.afterStop(draft: String, stop: String): MainAct.NextStop? =
    phone.stop(draft, stop, emptyList(), UInt.MAX_VALUE)?.main?.act as? MainAct.NextStop

/** Up to so many lines how to look stands under each at once. */
private const val FEW_LINES = 4
