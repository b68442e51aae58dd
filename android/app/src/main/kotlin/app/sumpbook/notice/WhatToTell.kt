package app.sumpbook.notice

import app.sumpbook.core.LockState
import app.sumpbook.core.PartNow
import app.sumpbook.core.Standing
import app.sumpbook.core.UnitScreen
import app.sumpbook.core.keyOfLock
import app.sumpbook.core.keyOfStanding
import app.sumpbook.ui.desk.Reader

/** What a notice is about; each has a channel of its own, so that a person can be woken by one and not by the other. */
enum class About { LOCK, SERVICE }

/**
 * One notice: of one unit, about one matter.
 *
 * @property fingerprint changes when there is something new to tell
 * @property lines what stands in it; never a person's name beside a fault
 */
data class Notice(val about: About, val unit: String, val door: String, val fingerprint: String, val lines: List<String>)

/** What is to be told of the units this phone follows: parts that are locked, services that are due or past due. */
fun Reader.whatToTell(): List<Notice> {
    // Only the main button depends on who asks, and it is not told here.
    val someone = fleet.people.firstOrNull { !it.gone } ?: return emptyList()
    return fleet.units.map { phone.unit(it.id, someone.id) }.flatMap { listOfNotNull(locks(it), services(it)) }
}

private fun Reader.locks(unit: UnitScreen): Notice? {
    val locked = (listOf(unit.roadAir.road, unit.roadAir.air) + unit.roadAir.outlets).filter { it.state == LockState.LOCKED }
    if (locked.isEmpty()) return null
    return Notice(About.LOCK, unit.id, unit.door, locked.joinToString("|") { "${it.part}@${it.since}" }, locked.map(::lock))
}

private fun Reader.lock(part: PartNow): String {
    val since = part.since?.let { " ${moments.at(it)}" }.orEmpty()
    val why = part.why.map { one -> item(one.item, one.place) + one.word?.let { ": ${choice(it)}" }.orEmpty() }
    return (listOf("${part(part.part)}: ${words(keyOfLock(part.state))}$since") + why).joinToString(". ")
}

private fun Reader.services(unit: UnitScreen): Notice? {
    val due = unit.tasks.filter { it.standing == Standing.DUE_TODAY || it.standing == Standing.PAST_DUE }
    if (due.isEmpty()) return null
    return Notice(
        About.SERVICE, unit.id, unit.door, due.joinToString("|") { "${it.id}@${it.standing}" },
        due.map { "${wordsOr("task-${it.id}", it.id)}: ${words(keyOfStanding(it.standing))}" },
    )
}
