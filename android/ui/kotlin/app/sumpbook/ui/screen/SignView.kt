package app.sumpbook.ui.screen

import app.sumpbook.core.AnswerKind
import app.sumpbook.core.LockState
import app.sumpbook.core.StopMark
import app.sumpbook.core.StopScreen
import app.sumpbook.ui.desk.Reader

/** One stop on the page that sums up: pressable, so that one looks again. */
data class StopRow(val label: String, val title: String, val under: String, val mark: StopMark, val lines: List<LineWords>)

/** What one puts one's name to. */
data class SignView(
    val door: String,
    val stops: List<StopRow>,
    val ok: Int,
    val defects: List<String>,
    val other: List<String>,
    /** The first stop that is open; none: all are answered. */
    val open: String?,
) {
    val marks: List<StopMark> get() = stops.map { it.mark }
}

/** The whole walk, stop after stop, as the core has it. */
fun Reader.signView(unit: String, draft: String): SignView {
    val screens = wholeWalk(draft)
    val lines = screens.flatMap { it.lines }
    fun answered(kind: AnswerKind) = lines.filter { it.answer?.answer == kind }.map(::lineWords).map { "${it.name}: ${it.said}" }
    return SignView(
        door = fleet.units.firstOrNull { it.id == unit }?.door.orEmpty(),
        stops = screens.map(::stopRow),
        ok = lines.count { it.answer?.answer == AnswerKind.OK },
        defects = answered(AnswerKind.DEFECT),
        other = answered(AnswerKind.COULD_NOT_CHECK) + answered(AnswerKind.NOT_FITTED),
        open = screens.firstOrNull { it.left > 0u }?.label,
    )
}

/** The parts of a unit that are locked now, by name. */
fun Reader.lockedParts(unit: String, person: String): List<String> {
    val of = phone.unit(unit, person).roadAir
    return (listOf(of.road, of.air) + of.outlets).filter { it.state == LockState.LOCKED }.map { part(it.part) }
}

private fun Reader.stopRow(screen: StopScreen): StopRow {
    val mark = screen.marks.getOrElse(screen.index.toInt() - 1) { StopMark.TO_COME }
    val together = screen.together.map { words("stop-answered-together", "lines" to it.lines, "seconds" to (it.afterMs ?: 0u) / 1_000u) }
    val state = words("mark-${mark.name.lowercase().replace('_', '-')}")
    return StopRow(
        label = screen.label,
        title = words("stop-${screen.stop}"),
        under = (listOf(state) + together).joinToString(". "),
        mark = mark,
        lines = screen.lines.map(::lineWords),
    )
}
