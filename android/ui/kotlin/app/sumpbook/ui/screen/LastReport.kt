package app.sumpbook.ui.screen

import androidx.compose.foundation.background
import androidx.compose.foundation.border
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.rememberScrollState
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.pluralStringResource
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.CertificateRow
import app.sumpbook.core.DefectNow
import app.sumpbook.core.DefectRow
import app.sumpbook.core.ReportRow
import app.sumpbook.core.SaidRow
import app.sumpbook.core.TakeOverScreen
import app.sumpbook.core.Verdict
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.frame.rememberSeen
import app.sumpbook.ui.frame.seenAs
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.hours
import kotlinx.coroutines.launch

/** A defect of the last report in words. */
data class DefectWords(val id: String, val title: String, val locks: String?, val said: List<String>, val certificate: List<String>, val open: Boolean, val photos: List<String> = emptyList(), val sounds: List<String> = emptyList())

/** What the last one left, with its words; on a short walk the first driver's record of today. */
data class LastReportView(
    val door: String,
    val title: Int,
    val news: List<String>,
    val report: List<String>,
    val defects: List<DefectWords>,
    val main: String,
    val whyNot: String?,
    /** The first driver's sum; none where the last report is read. */
    val sum: TakeOverScreen? = null,
    val figures: List<String> = emptyList(),
)

/** What is read before a walk, with so many rows seen: the last report, or on a short walk the first driver's record. */
fun Reader.beforeTheWalk(unit: String, draft: String, whole: Set<String>): LastReportView =
    draft.ifEmpty { null }?.let { phone.follows(it) }?.let { takeOverView(unit, it, whole) } ?: lastReportView(unit, whole)

/** What the last one left, with so many rows seen. */
fun Reader.lastReportView(unit: String, whole: Set<String>): LastReportView {
    val record = phone.lastReport(unit, whole.toList())
    return LastReportView(
        door = record.door,
        title = R.string.what_was_left,
        news = newsWords(record.news),
        report = reportWords(record.report, record.defects.isEmpty()),
        defects = record.defects.map(::defectWords),
        main = label(record.main, record.door),
        whyNot = record.main.whyNot?.let(::whyNot),
    )
}

private fun Reader.takeOverView(unit: String, after: String, whole: Set<String>): LastReportView {
    val record = phone.takeOver(unit, after, whole.toList())
    return LastReportView(
        door = record.door,
        title = R.string.first_drivers_record,
        news = newsWords(record.news),
        report = listOf("${record.by.joinToString(", ")}, ${moments.at(record.at)}"),
        sum = record,
        figures = listOfNotNull(record.hours?.let { "${words("meter-compressor")}: ${hours(it)}" }) +
            (record.figures + record.notChecked).distinct().map(::signRowWords),
        defects = record.defects.map(::defectWords),
        main = label(record.main, record.door),
        whyNot = record.main.whyNot?.let(::whyNot),
    )
}

/** The last end-of-day report: whose, or that none is held; [none]: no defect is listed. */
fun Reader.reportWords(report: ReportRow?, none: Boolean): List<String> = when {
    report == null -> listOf(words("report-none-held"))
    none -> listOfNotNull(words("report-none-found", "when" to moments.at(report.at)), report.toNext)
    else -> listOfNotNull("${report.by.orEmpty()}, ${moments.at(report.at)}", report.toNext)
}

/** A defect, with who said what of it. */
fun Reader.defectWords(row: DefectRow): DefectWords {
    val word = row.said.firstNotNullOfOrNull { it.word }
    return DefectWords(
        id = row.id,
        title = item(row.item, row.place) + word?.let { ": ${choice(it)}" }.orEmpty(),
        locks = row.locks.joinToString(", ", transform = ::part).ifEmpty { null },
        said = row.said.map(::saidWords),
        certificate = row.certificate?.let(::certificateWords) ?: listOf(words("report-no-certificate")),
        open = row.state == DefectNow.OPEN,
        photos = row.said.flatMap { it.photos }.distinct(),
        sounds = row.said.mapNotNull { it.sound }.distinct(),
    )
}

private fun Reader.saidWords(said: SaidRow): String {
    val answer = if (said.ok) words("answer-ok") else said.word?.let(::choice) ?: words("answer-defect")
    val own = said.words?.let { ": '$it'" }.orEmpty()
    return "${said.by.orEmpty()}, ${moments.at(said.at)}: $answer$own"
}

private fun Reader.certificateWords(certificate: CertificateRow): List<String> {
    val verdict = words(if (certificate.verdict == Verdict.REPAIRED) "verdict-repaired" else "verdict-not-needed")
    val own = certificate.words.ifEmpty { null }?.let { "'$it'" }
    return listOfNotNull("$verdict, ${certificate.by.orEmpty()}, ${moments.at(certificate.at)}", own)
}

/** The law's review, signed with the walk: it opens the walk. */
@Composable
fun LastReport(unit: String, draft: String) {
    val scroll = rememberScrollState()
    val rows = rememberSeen(scroll)
    val shown by seen(unit, draft, rows.whole) { beforeTheWalk(unit, draft, rows.whole) }
    val told = shown ?: return
    val view = (told as? Told.Got)?.it
    val back = LocalBackStack.current
    val desk = LocalDesk.current
    val act = rememberAct()
    val scope = rememberCoroutineScope()
    ScreenFrame(
        header = { DoorHeader(view?.door.orEmpty(), stringResource(view?.title ?: R.string.what_was_left)) { back.back() } },
        strips = {
            if (told is Told.Refused) Strip(sentence(told.why))
            act.refused?.let { Strip(sentence(it)) }
            view?.news?.forEach { Strip(it) }
        },
        secondary = if (draft.isEmpty()) null else ({ SecondaryButton(stringResource(R.string.not_what_i_see)) { back.go(Place.NotWhatISee(unit, draft)) } }),
        // Read without a walk it is nobody's review: one goes back as one came.
        main = if (draft.isEmpty()) ({ MainPress(stringResource(R.string.back)) { back.back() } }) else view?.let {
            {
                MainPress(it.main, it.whyNot, onEarly = { scope.launch { rows.turn() } }) {
                    act.now({ phone.lastReportWasRead(draft, rows.whole.toList()) }) {
                        desk.walks.begins(draft)
                        back.goInstead(Place.Stop(unit, draft, ""))
                    }
                }
            }
        },
        scroll = scroll,
        seen = rows,
    ) {
        Section(null, view?.report.orEmpty() + listOfNotNull(view?.sum?.let { firstDriversSum(it) }) + view?.figures.orEmpty())
        view?.defects?.forEach { Left(it, Modifier.seenAs(it.id, rows)) }
    }
}

/** "104 OK, 98 of them by one tap a stop; 6 stops are walked again". */
@Composable
private fun firstDriversSum(sum: TakeOverScreen): String = listOf(
    stringResource(R.string.sum_ok, sum.ok.toInt()),
    stringResource(R.string.sum_together, sum.okTogether.toInt()),
    pluralStringResource(R.plurals.stops_walked_again, sum.stops.toInt(), sum.stops.toInt()),
).joinToString(", ")

@Composable
private fun Left(defect: DefectWords, modifier: Modifier) {
    val tokens = LocalTokens.current
    val type = LocalType.current
    Column(
        modifier.fillMaxWidth().background(tokens.sheet).border(if (defect.open) 4.dp else 2.dp, if (defect.open) tokens.stop else tokens.ink).padding(12.dp),
        Arrangement.spacedBy(4.dp),
    ) {
        Text(defect.title, style = type.line)
        defect.locks?.let { Text(it, style = type.strong) }
        defect.said.forEach { Text(it, style = type.help, color = tokens.soft) }
        defect.certificate.forEach { Text(it, style = type.text) }
        defect.photos.forEach { PhotoShown(it) }
        defect.sounds.forEach { SoundHeard(it) }
    }
}
