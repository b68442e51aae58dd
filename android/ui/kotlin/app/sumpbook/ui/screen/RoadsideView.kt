package app.sumpbook.ui.screen

import app.sumpbook.core.PartAnswer
import app.sumpbook.core.PartRow
import app.sumpbook.core.RoadsideScreen
import app.sumpbook.core.SignedBy
import app.sumpbook.core.keyOfPart
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.words.figure
import java.time.OffsetDateTime

/** One of the rule's eleven parts in words; no [answer]: nobody has looked at it here. */
data class ElevenPartWords(val name: String, val answer: String?, val defect: Boolean, val by: String?, val figures: List<String>)

/** What an officer is shown of a unit, with its words. */
data class RoadsideView(
    val record: RoadsideScreen,
    val inspection: String?,
    val asKnown: String,
    val news: List<String>,
    val roadAir: List<PartWords>,
    val parts: List<ElevenPartWords>,
    val report: List<String>,
    val defects: List<DefectWords>,
    /** Who signed, and when; without a PIN it is said. */
    val signed: List<Pair<String, SignedBy>>,
    /** What the page's picture says: the shop, holding the same books, checks it with. */
    val code: String,
)

/** The officer's page of a unit, and nothing of any other. */
fun Reader.roadsideView(unit: String): RoadsideView {
    val record = phone.roadside(unit)
    return RoadsideView(
        record = record,
        inspection = record.annualInspection?.let(moments::day),
        asKnown = moments.at(record.knownAt),
        news = newsWords(record.news),
        roadAir = roadAirWords(record.roadAir),
        parts = record.parts.map(::elevenPartWords),
        report = reportWords(record.report, record.defects.isEmpty()),
        defects = record.defects.map(::defectWords),
        signed = record.signed.map { listOfNotNull(it.by, moments.at(it.at)).joinToString(", ") to it },
        code = "${record.door} ${OffsetDateTime.parse(record.knownAt).toInstant().toEpochMilli()} ${record.check}",
    )
}

private fun Reader.elevenPartWords(row: PartRow) = ElevenPartWords(
    name = words(keyOfPart(row.part)),
    answer = when (row.answer) {
        PartAnswer.OK -> words("answer-ok")
        PartAnswer.DEFECT -> words("answer-defect")
        PartAnswer.COULD_NOT_CHECK -> words("answer-could-not-check")
        PartAnswer.NOT_FITTED -> words("answer-not-fitted")
        PartAnswer.NOT_ANSWERED -> null
    },
    defect = row.answer == PartAnswer.DEFECT,
    by = row.at?.let { listOfNotNull(row.by, moments.at(it)).joinToString(", ") },
    figures = row.figures.map { "${item(it.item)}: ${figure(it.figure)}" },
)
