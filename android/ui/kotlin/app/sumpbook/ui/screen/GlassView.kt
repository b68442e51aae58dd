package app.sumpbook.ui.screen

import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Figure
import app.sumpbook.core.Glass
import app.sumpbook.core.GlassScreen
import app.sumpbook.core.How
import app.sumpbook.core.ItemFigure
import app.sumpbook.core.LevelNow
import app.sumpbook.core.StopNow
import app.sumpbook.core.Wait
import app.sumpbook.core.Warmth
import app.sumpbook.core.keyOfLevel
import app.sumpbook.core.keyOfMain
import app.sumpbook.ui.desk.Reader

/** The sight glass, with its words. */
data class GlassView(
    val record: GlassScreen,
    val oil: List<String>,
    /** How long it stood, or that it runs. */
    val wait: List<String>,
    /** Nobody knows whether it stood: ask. */
    val asks: Boolean,
    /** "38 %", below view; none before it was given. */
    val given: String?,
    /** That against the middle. */
    val level: String,
    /** The parts that this level locks. */
    val locks: List<String>,
    val rose: String?,
    val main: String?,
    val whyNot: String?,
    /** The day's number, to be in view on a photo that is asked. */
    val dayNumber: Int,
) {
    val middle: IntRange get() = record.middle.low.toInt()..record.middle.high.toInt()

    /** The level as it answers a line of the walk: a finding of its own where the checklist has a word for it. */
    fun answer(line: LineWords, glass: Glass, onScreenMs: UInt): Answer {
        val figures = (glass as? Glass.Percent)?.let { listOf(ItemFigure(Figure(it.v1.toLong(), 0u, "%"), How.ASKED)) }.orEmpty()
        return Answer(
            item = line.row.item,
            place = line.row.place,
            answer = if (record.word == null) AnswerKind.OK else AnswerKind.DEFECT,
            word = record.word,
            figures = figures,
            onScreenMs = onScreenMs,
        )
    }
}

/** The glass of a unit with so much given, and what was said of its standing still. */
fun Reader.glassView(unit: String, given: Glass?, saidStopped: Boolean?, warmth: Warmth? = null, oilTemperature: Figure? = null): GlassView {
    val record = phone.glass(unit, given, saidStopped, warmth, oilTemperature)
    val running = record.stop as? StopNow.Running
    return GlassView(
        record = record,
        oil = oilWords(record.oil),
        wait = listOfNotNull(running?.let { words("running-since", "when" to moments.at(it.v1)) }, waitWords(record.wait)),
        asks = record.wait is Wait.Ask || saidStopped != null,
        given = given?.let(::glass),
        level = levelWords(record.level),
        locks = lockedParts(record.locks),
        rose = if (record.roseWithoutAPour) words("level-rose") else null,
        main = given?.let { words(keyOfMain(record.main.act), "level" to glass(it)) },
        whyNot = record.main.whyNot?.let(::whyNot),
        dayNumber = moments.dayNumber(),
    )
}

/** How long it had stood. */
fun Reader.waitWords(wait: Wait): String = when (wait) {
    is Wait.Enough -> wait.v1.minutes?.let { words("wait-enough", "minutes" to it) } ?: words("wait-said")
    is Wait.TooShort -> words("wait-too-short", "left" to wait.leftS)
    Wait.Ask -> words("wait-ask")
}

/** A level against the middle. */
fun Reader.levelWords(level: LevelNow): String = when (level) {
    is LevelNow.Under -> words(keyOfLevel(level), "percent" to level.v1.toInt())
    is LevelNow.Over -> words(keyOfLevel(level), "percent" to level.v1.toInt())
    else -> words(keyOfLevel(level))
}
