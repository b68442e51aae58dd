package app.sumpbook.ui.screen

import app.sumpbook.core.Meter
import app.sumpbook.core.OilFamily
import app.sumpbook.core.OilLine
import app.sumpbook.core.OnCall
import app.sumpbook.core.PourRow
import app.sumpbook.core.UnitScreen
import app.sumpbook.core.Unlike
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.words.hours
import app.sumpbook.ui.words.volume

/** One unit, with its words. */
data class UnitView(
    val record: UnitScreen,
    val parts: List<PartWords>,
    val news: List<String>,
    /** What is locked and the shop does not know of yet. */
    val lockedOnlyHere: String?,
    val leftBy: List<String>,
    /** Defects that lock nothing, by their names: what is locked stands above with its reason. */
    val notes: List<String>,
    val oil: List<String>,
    /** Where its oil goes; empty while nothing is known of it. */
    val oilUse: List<String>,
    val tasks: List<TaskWords>,
    val pours: List<String>,
    val hours: List<String>,
    /** What waits for somebody: a reminder that went by, display notes that are open. */
    val open: List<String>,
    /** Figures that are not settled, both of them, and which one is used. */
    val unsettled: List<String>,
    val unlike: List<String>,
    /** The yard's day. */
    val day: String,
    /** Starting the air or stopping it, whichever comes next: what it is called. */
    val air: String,
    /** What else is gone through step by step: its id and what it is called. */
    val procedures: List<Pair<String, String>>,
    val onCall: List<OnCall>,
    val preTrip: String,
    val main: String,
)

/** One unit as this person's. */
fun Reader.unitView(unit: String, person: String): UnitView {
    val record = phone.unit(unit, person)
    return UnitView(
        record = record,
        parts = roadAirWords(record.roadAir),
        news = newsWords(record.news),
        lockedOnlyHere = lockedOnlyHere(record),
        leftBy = leftBy(record),
        notes = if (record.openDefects == 0u) emptyList() else phone.lastReport(unit, emptyList()).defects.filter { it.locks.isEmpty() }.map { defectWords(it).title },
        oil = oilWords(record.oil),
        oilUse = record.oilUse?.let(::oilUseWords).orEmpty(),
        tasks = record.tasks.map(::taskWords),
        pours = record.pours.map(::pourWords),
        hours = hoursWords(record),
        open = openWords(record),
        unsettled = unsettledWords(record),
        unlike = record.unlike?.let(::unlikeWords).orEmpty(),
        day = moments.day(record.day),
        air = procedureTitle(record.air),
        procedures = record.procedures.map { it to procedureTitle(it) },
        onCall = fleet.onCall,
        preTrip = preTripWords(record.preTrip),
        main = label(record.main, record.door),
    )
}

/** That something of a unit is locked and the shop does not know yet; none where it knows, or nothing is. */
fun Reader.lockedOnlyHere(record: UnitScreen): String? =
    record.lockedOnlyHere.ifEmpty { null }?.let { words("lock-only-here", "parts" to it.joinToString(", ", transform = ::part)) }

private fun Reader.leftBy(record: UnitScreen): List<String> {
    val report = record.leftBy ?: return listOf(
        record.knownSince?.let { words("unit-known-since", "door" to record.door, "day" to moments.day(it)) } ?: words("unit-nothing-known", "door" to record.door),
    )
    val by = words("unit-left-by", "by" to report.by.orEmpty(), "when" to moments.at(report.at))
    val listed = if (record.openDefects == 0u) words("end-none-found") else words("report-listed", "count" to record.openDefects)
    return listOfNotNull("$by: $listed", report.toNext)
}

private fun Reader.openWords(record: UnitScreen): List<String> = listOfNotNull(
    record.reminderGoneBy?.let { "${words("task-reminder-gone")} ${moments.at(it)}" },
    record.openNotes.takeIf { it > 0u }?.let { words("unit-notes-open", "count" to it) },
)

private fun Reader.unsettledWords(record: UnitScreen): List<String> {
    if (record.openQuestions == 0u) return emptyList()
    val asked = phone.hours(record.id, null, Meter.COMPRESSOR)
    return asked.questions.map(::questionWords) + listOfNotNull(if (asked.higherOfDisputed) words("unit-higher-used") else null)
}

/** The oil that belongs in a unit, and where it last stood. */
fun Reader.oilWords(oil: OilLine): List<String> {
    val family = oil.family?.let(::familyWords)
    val last = oil.last?.let { "${glass(it.glass)}, ${moments.at(it.at)}, ${it.by.orEmpty()}" }
    return listOfNotNull(listOfNotNull(family, oil.grade).joinToString(" ").ifEmpty { null }, last)
}

/** An oil family. */
fun Reader.familyWords(family: OilFamily): String = words("family-${family.name.lowercase().replace('_', '-')}")

/** A top-up that was recorded. */
fun Reader.pourWords(pour: PourRow): String {
    val volumes = pour.volumes.joinToString(" + ") { volume(it, way.metric) }
    val fluid = words("fluid-${pour.fluid.name.lowercase().replace('_', '-')}")
    return "$fluid $volumes, ${moments.at(pour.at)}, ${pour.by.orEmpty()}"
}

private fun Reader.hoursWords(of: UnitScreen): List<String> {
    val low = of.countedAtLeast
    val high = of.hours
    val counted = if (low != null && high != null) words("hours-counted-between", "low" to hours(low), "high" to hours(high)) else null
    val read = of.reading?.let { "${hours(it.figure)} h, ${moments.at(it.at)}" }
    val estimated = of.estimates.map {
        words("hours-estimated", "low" to hours(it.low), "likely" to hours(it.likely), "high" to hours(it.high))
    }
    val pace = of.paceTenths?.let { words("pace-a-day", "hours" to hours(it)) }
    val others = of.otherMeters.mapNotNull { other ->
        other.reading?.let { "${words("meter-${other.meter.name.lowercase()}")}: ${hours(it.figure)} h, ${moments.at(it.at)}" }
    }
    return listOfNotNull(counted ?: read) + estimated + listOfNotNull(pace) + others
}

private fun Reader.unlikeWords(of: Unlike): List<String> {
    fun named(features: List<String>, key: String) =
        if (features.isEmpty()) null else "${words(key)}: ${features.joinToString(", ") { wordsOr("feature-$it", it) }}"
    return listOfNotNull(words("unit-unlike", "usual" to of.usual), named(of.onlyHere, "unit-only-here"), named(of.notHere, "unit-not-here"))
}
