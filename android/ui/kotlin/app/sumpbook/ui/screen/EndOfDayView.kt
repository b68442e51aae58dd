package app.sumpbook.ui.screen

import app.sumpbook.core.EndOfDayScreen
import app.sumpbook.core.keyOfNotice
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.words.hours
import app.sumpbook.ui.words.value

/** The end of a day as the next driver will read it, with its words. */
data class EndOfDayView(
    val record: EndOfDayScreen,
    val time: String,
    val notices: List<String>,
    val noneFound: String,
    val found: List<String>,
    val notes: List<NoteWords>,
    val poured: List<String>,
    /** Hours given, or the last ones read. */
    val hours: String?,
    val lastHours: Pair<String, Long>?,
    val odometer: String?,
    val covers: String?,
    /** The site's dust; none where it does not count. */
    val site: SiteWords?,
    val main: String,
    val whyNot: String?,
)

/** An end-of-day report as it stands. */
fun Reader.endOfDayView(draft: String): EndOfDayView {
    val record = phone.endOfDay(draft)
    return EndOfDayView(
        record = record,
        time = moments.timeNow(),
        notices = record.notices.map { words(keyOfNotice(it)) },
        noneFound = words("end-none-found"),
        found = record.found.map(::foundWords),
        notes = record.notes.map(::noteWords),
        poured = record.poured.map(::pourWords),
        hours = record.hours?.let(::hours),
        lastHours = record.lastHours?.let { moments.at(it.at) to it.figure },
        odometer = record.odometer?.let { value(it).toPlainString() },
        covers = record.coversFrom?.let { words("end-covers", "from" to moments.at(it), "to" to moments.timeNow()) },
        site = record.site?.let(::siteWords),
        main = label(record.main, record.door),
        whyNot = record.main.whyNot?.let(::whyNot),
    )
}
