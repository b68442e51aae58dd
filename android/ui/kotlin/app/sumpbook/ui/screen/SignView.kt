package app.sumpbook.ui.screen

import app.sumpbook.core.AnswerKind
import app.sumpbook.core.FoundRow
import app.sumpbook.core.LockState
import app.sumpbook.core.SignRow
import app.sumpbook.core.SignScreen
import app.sumpbook.core.SignStop
import app.sumpbook.core.StopMark
import app.sumpbook.core.Together
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.words.capital
import app.sumpbook.ui.words.figure
import app.sumpbook.ui.words.hours

/** One stop on the page that sums up: pressable, so that one looks again. */
data class StopRow(val label: String, val at: Int, val title: String, val under: String, val mark: StopMark)

/** What one puts one's name to, with its words. */
data class SignView(
    val record: SignScreen,
    val day: String,
    val stops: List<StopRow>,
    val defects: List<String>,
    val other: List<String>,
    /** Hours, glass, drops, each by its name; none when nothing was read. */
    val figures: String?,
) {
    val marks: List<StopMark> get() = stops.map { it.mark }
}

/** The whole walk as it will stand under the name, with the time it took. */
fun Reader.signView(draft: String, walkedMs: ULong?): SignView {
    val record = phone.signing(draft, walkedMs)
    return SignView(
        record = record,
        day = moments.dayNow(),
        stops = record.stops.map(::stopRow),
        defects = record.defects.map(::foundWords),
        other = record.notChecked.map(::signRowWords),
        figures = (listOfNotNull(record.hours?.let { "${capital(words("meter-compressor"))}: ${hours(it)}" }) + record.figures.map(::figureByName))
            .joinToString("; ").ifEmpty { null },
    )
}

/** "Sight glass: 48 %"; no figure is parted from its unit. */
private fun Reader.figureByName(row: SignRow): String =
    "${item(row.item, row.place)}: ${row.figures.joinToString { figure(it.figure).replace(' ', '\u00A0') }}"

/** A defect with its word: "Mirrors, right: cracked". */
fun Reader.foundWords(row: FoundRow): String = item(row.item, row.place) + row.word?.let { ": ${choice(it)}" }.orEmpty()

/** An answer that is not OK, or that carries a figure: "Sight glass: 48 %". */
fun Reader.signRowWords(row: SignRow): String {
    val what = when (row.answer) {
        AnswerKind.OK -> null
        AnswerKind.DEFECT -> row.word?.let(::choice) ?: words("answer-defect")
        AnswerKind.NOT_FITTED -> words("answer-not-fitted")
        AnswerKind.COULD_NOT_CHECK -> words("answer-could-not-check")
    }
    val figures = row.figures.joinToString { figure(it.figure) }.ifEmpty { null }
    val own = row.words?.let { "'$it'" }
    return "${item(row.item, row.place)}: ${listOfNotNull(figures, what, own).joinToString(", ")}"
}

/** Lines answered by one tap, and after how long. */
fun Reader.togetherWords(together: Together): String =
    words("stop-answered-together", "lines" to together.lines, "seconds" to (together.afterMs ?: 0u) / 1_000u)

/** The parts of a unit that are locked now, by name. */
fun Reader.lockedParts(unit: String, person: String): List<String> {
    val of = phone.unit(unit, person).roadAir
    return (listOf(of.road, of.air) + of.outlets).filter { it.state == LockState.LOCKED }.map { part(it.part) }
}

private fun Reader.stopRow(stop: SignStop): StopRow {
    val state = words("mark-${stop.mark.name.lowercase().replace('_', '-')}")
    return StopRow(
        label = stop.label,
        at = stop.at.toInt(),
        title = words("stop-${stop.stop}"),
        under = (listOf(state) + stop.together.map(::togetherWords)).joinToString(". "),
        mark = stop.mark,
    )
}
