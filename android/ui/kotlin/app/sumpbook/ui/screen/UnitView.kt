package app.sumpbook.ui.screen

import app.sumpbook.core.OilFamily
import app.sumpbook.core.OilLine
import app.sumpbook.core.OnCall
import app.sumpbook.core.PourRow
import app.sumpbook.core.ReportRow
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
    val leftBy: List<String>,
    val oil: List<String>,
    val tasks: List<TaskWords>,
    val pours: List<String>,
    val hours: List<String>,
    val unlike: List<String>,
    /** What is gone through step by step: its id and what it is called. */
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
        leftBy = leftBy(record.leftBy, record.openDefects),
        oil = oilWords(record.oil),
        tasks = record.tasks.map(::taskWords),
        pours = record.pours.map(::pourWords),
        hours = hoursWords(record),
        unlike = record.unlike?.let(::unlikeWords).orEmpty(),
        procedures = record.procedures.map { it to procedureTitle(it) },
        onCall = fleet.onCall,
        preTrip = preTripWords(record.preTrip),
        main = label(record.main, record.door),
    )
}

private fun Reader.leftBy(report: ReportRow?, open: UInt): List<String> {
    if (report == null) return listOf(words("report-none-held"))
    val by = words("unit-left-by", "by" to report.by.orEmpty(), "when" to moments.at(report.at))
    val listed = if (open == 0u) words("end-none-found") else words("report-listed", "count" to open)
    return listOfNotNull("$by: $listed", report.toNext)
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
    val pace = of.paceTenths?.let { words("pace-a-day", "hours" to hours(it)) }
    return listOfNotNull(counted ?: read, pace)
}

private fun Reader.unlikeWords(of: Unlike): List<String> {
    fun named(features: List<String>, key: String) =
        if (features.isEmpty()) null else "${words(key)}: ${features.joinToString(", ") { wordsOr("feature-$it", it) }}"
    return listOfNotNull(words("unit-unlike", "usual" to of.usual), named(of.onlyHere, "unit-only-here"), named(of.notHere, "unit-not-here"))
}
