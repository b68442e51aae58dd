package app.sumpbook.ui.screen

import app.sumpbook.core.AirAnswer
import app.sumpbook.core.AirFieldRow
import app.sumpbook.core.AirFigure
import app.sumpbook.core.AirForTheJob
import app.sumpbook.core.AirPart
import app.sumpbook.core.AirWarningRow
import app.sumpbook.core.JobSaid
import app.sumpbook.core.ShortRuns
import app.sumpbook.ui.desk.Reader

/** A figure of the calculator with its words. */
data class AirFieldWords(val row: AirFieldRow, val wanted: FigureWanted)

/** Figures of one thing: the place, one tool, the hose, cleaning. */
data class AirGroup(val part: AirPart, val tool: Int, val title: String, val fields: List<AirFieldWords>)

/** Air for the job, with its words. */
data class AirJobView(
    val record: AirForTheJob,
    val cautions: List<String>,
    val saysWhat: String,
    val answerTitle: String,
    val answer: List<String>,
    val warnings: List<String>,
    val groups: List<AirGroup>,
    val cutOff: String,
    val blowing: String,
    val blowCaution: String,
    val guarded: String,
    val anotherTool: String,
    val main: String,
    val next: AirFieldRow?,
)

/** The air for a job with a unit, as it was said so far. */
fun Reader.airJobView(unit: String, said: JobSaid): AirJobView {
    val record = phone.airForTheJob(unit, way.metric, said)
    // Of a job without cleaning the nozzle is not asked.
    val asked = record.fields.filter { it.part != AirPart.CLEANING || record.blowing }
    val next = asked.firstOrNull { it.wanted }
    return AirJobView(
        record = record,
        cautions = listOf(words("caution-opening"), words("caution-not-breathing")),
        saysWhat = words("air-says-what"),
        answerTitle = words("air-answer"),
        answer = (record.answer?.let(::answerWords) ?: listOf(words("air-no-answer"))) + listOfNotNull(record.shortRuns?.let(::shortRuns)),
        warnings = record.answer?.warnings?.map(::warningWords).orEmpty(),
        groups = asked.groupBy { it.part to it.tool.toInt() }.map { (of, rows) -> AirGroup(of.first, of.second, title(of.first, of.second), rows.map(::fieldWords)) },
        cutOff = words("air-cut-off"),
        blowing = words("air-blowing"),
        blowCaution = words("caution-blow-clean"),
        guarded = words("air-guarded"),
        anotherTool = words("air-another-tool"),
        main = if (next == null) words("air-done") else words("air-give", "field" to words(next.key)),
        next = next,
    )
}

private fun Reader.title(part: AirPart, tool: Int): String = when (part) {
    AirPart.PLACE -> words("air-where")
    AirPart.TOOL -> words("air-tool", "n" to tool)
    AirPart.HOSE -> words("air-hose")
    AirPart.CLEANING -> words("air-cleaning")
}

private fun Reader.fieldWords(row: AirFieldRow): AirFieldWords {
    val said = row.said
    val wanted = FigureWanted(
        name = words(row.key),
        unit = row.unit,
        places = row.places.toInt(),
        belowZero = row.belowZero,
        said = if (said != null) withUnit(said, row.unit) else row.own?.let { words("air-own", "figure" to withUnit(it, row.unit)) },
        wrong = said?.takeIf { row.wrong }?.let { words("air-left-out", "said" to it) },
        offered = row.offered.map { offered ->
            val width = withUnit(offered.said, row.unit)
            offered.said to listOfNotNull(offered.tag?.let { words("air-hose-by-tag", "tag" to it) }, width).joinToString(", ")
        },
        chosen = said,
    )
    return AirFieldWords(row, wanted)
}

private fun Reader.about(key: String, figure: AirFigure?): String =
    words(key, "figure" to figure?.let { withUnit(it.value, it.unit) }.orEmpty())

private fun Reader.answerWords(answer: AirAnswer): List<String> =
    answer.rows.map { "${words(it.key)}: ${about(it.told, it.figure)}" } + answer.stoodIn.map { words(it) } +
        listOfNotNull(if (answer.warnings.isEmpty()) words("air-no-warning") else null)

/** What to look out for, and where it is written. */
private fun Reader.warningWords(warning: AirWarningRow): String {
    val source = warning.cites ?: words("${warning.key}-source")
    return "${about(warning.key, warning.figure)} ${words("air-source", "source" to source)}"
}

private fun Reader.shortRuns(runs: ShortRuns): String {
    val said = words("air-short-runs", "runs" to runs.runs, "short" to runs.short, "percent" to runs.percent)
    return if (runs.runItWarm) "$said ${words("air-run-it-warm")}" else said
}
