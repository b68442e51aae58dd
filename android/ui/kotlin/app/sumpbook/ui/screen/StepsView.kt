package app.sumpbook.ui.screen

import app.sumpbook.R
import app.sumpbook.core.Figure
import app.sumpbook.core.NotSo
import app.sumpbook.core.NotSoRow
import app.sumpbook.core.OnCall
import app.sumpbook.core.Severity
import app.sumpbook.core.StepRow
import app.sumpbook.core.StepSaid
import app.sumpbook.ui.desk.Reader

/** A word for what is not so, and the parts it locks. */
data class NotSoWords(val row: NotSoRow, val words: String, val locks: List<String>)

/** One step, with its words. */
data class StepWords(val row: StepRow, val name: String, val ok: String, val stops: String, val caution: String?, val notSo: List<NotSoWords>)

/** A procedure of one unit, with its words. */
data class StepsView(
    val door: String,
    val steps: List<StepWords>,
    /** Why what it begins with is locked; none: nothing stands before the first step. */
    val locked: PartWords?,
    val opening: String,
    val onCall: List<OnCall>,
    /** The site's dust, asked with the last step of an arrival. */
    val site: SiteWords? = null,
) {
    /** How many steps are behind one: done, or gone on from although they were not so. */
    fun behind(said: List<StepSaid>): Int = said.count { one -> one.notSo == null || means(one) == NotSo.Mark }

    private fun means(said: StepSaid): NotSo? =
        steps.firstOrNull { it.row.id == said.step }?.notSo?.firstOrNull { it.row.word == said.notSo }?.row?.means
}

/** A procedure of a unit in words, in the core's order. */
fun Reader.stepsView(unit: String, procedure: String): StepsView {
    val record = phone.procedure(unit, procedure)
    return StepsView(
        door = record.door,
        steps = record.steps.map(::stepWords),
        locked = record.locked?.let(::partWords),
        opening = words("caution-opening"),
        onCall = fleet.onCall,
        site = record.site?.let(::siteWords),
    )
}

private fun Reader.stepWords(row: StepRow) = StepWords(
    row = row,
    name = words("step-${row.id}"),
    ok = words("step-${row.id}.ok"),
    stops = words("step-${row.id}.stops"),
    caution = row.caution?.let { words("caution-$it") },
    notSo = row.notSo.map { NotSoWords(it, words("not-so-${it.word}"), lockedParts(severity(it.means))) },
)

private fun severity(means: NotSo): Severity? = (means as? NotSo.Lock)?.v1

/** A step as it was said, written as one line, so that a system that ends the app in the background gives it back. */
fun lineOf(said: StepSaid): String =
    listOf(said.step, said.at, said.notSo.orEmpty(), said.figure?.let { "${it.digits} ${it.places} ${it.unit}" }.orEmpty()).joinToString("|")

/** A step from such a line. */
fun stepOf(line: String): StepSaid {
    val parts = line.split('|')
    val figure = parts[3].split(' ').takeIf { it.size == 3 }?.let { (digits, places, unit) -> Figure(digits.toLong(), places.toUByte(), unit) }
    return StepSaid(parts[0], parts[1], parts[2].ifEmpty { null }, figure)
}

/** What a procedure is called here. */
fun procedureTitle(procedure: String): Int = when (procedure) {
    "arrival" -> R.string.steps_arrival
    "start" -> R.string.start_air
    "use-air" -> R.string.steps_use_air
    "shut-down" -> R.string.stop_air
    else -> R.string.steps_leave_site
}

/** The procedures that are gone through by themselves, in a day's order. */
val PROCEDURES = listOf("arrival", "start", "use-air", "shut-down", "leave-site")
