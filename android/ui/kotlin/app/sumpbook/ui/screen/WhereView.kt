package app.sumpbook.ui.screen

import app.sumpbook.core.Aside
import app.sumpbook.core.PhotoPlace
import app.sumpbook.core.PhotoRow
import app.sumpbook.core.TryWhen
import app.sumpbook.core.WhereDay
import app.sumpbook.core.WhereRow
import app.sumpbook.core.WhereScreen
import app.sumpbook.core.keyOfTried
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.mark.Where

/** How many stand somewhere. */
data class WhereCount(val where: Where, val words: String)

/** An entry in words. */
data class EntryWords(val id: String, val where: Where, val what: String, val place: String, val why: String?, val files: List<FileWords>)

/** A photo, or a sound, that is not whole at the shop yet, and where it stands. */
data class FileWords(val sound: Boolean, val place: String)

/** One unit's entries of one day. */
data class DayWords(val title: String, val rows: List<EntryWords>, val unit: String?)

/** Where this phone's entries stand, with words. */
data class WhereView(
    val record: WhereScreen,
    val counts: List<WhereCount>,
    val news: List<String>,
    val tried: List<String>,
    /** The shop stopped this phone: since when, and what becomes of what is on it. */
    val stopped: String?,
    val days: List<DayWords>,
    val empty: String?,
    val main: String,
)

/** Where the entries of today and of so many days before stand. */
fun Reader.whereView(daysBack: Int): WhereView {
    val record = phone.whereItIs(daysBack.toUShort())
    val counts = record.counts
    return WhereView(
        record = record,
        counts = listOf(
            WhereCount(Where.OnPhone, "${words("where-on-phone")}: ${counts.onPhone}"),
            WhereCount(Where.AtShop, "${words("where-at-shop")}: ${counts.atShop}"),
            WhereCount(Where.Aside, "${words("where-aside")}: ${counts.aside}"),
        ),
        news = newsWords(record.news),
        tried = tries(record),
        stopped = record.stopped?.let { words("error-phone-stopped", "when" to moments.dayAndTime(it), "count" to counts.onPhone) },
        days = record.days.map(::dayWords),
        empty = if (record.days.isEmpty()) words("where-empty") else null,
        main = label(record.main, ""),
    )
}

private fun Reader.tries(record: WhereScreen): List<String> {
    val why = record.triedWhy?.let { words(keyOfTried(it)) }
    val tried = record.tried?.let { if (why == null) words("where-tried", "when" to moments.at(it)) else words("where-tried-why", "when" to moments.at(it), "why" to why) }
    val wish = phone.wish()
    val again = record.again?.let(moments::at) ?: (wish as? TryWhen.NotBefore)?.let { moments.atMs(it.v1) }
    return listOfNotNull(tried, again?.let { words("where-again", "when" to it) })
}

private fun Reader.dayWords(day: WhereDay) =
    DayWords(listOfNotNull(moments.day(day.day), day.door).joinToString(", "), day.rows.map(::entryWords), day.unit)

private fun Reader.entryWords(row: WhereRow): EntryWords {
    val where = Where.of(row)
    val place = when (where) {
        Where.OnPhone -> words("where-on-phone")
        Where.AtShop -> words("where-at-shop")
        Where.Aside -> words("where-aside")
    }
    val files = row.photos.filter { it.place != PhotoPlace.AtShop }.map { FileWords(it.sound, fileWords(it)) }
    return EntryWords(row.id, where, "${words("kind-${row.kind}")} ${moments.time(row.at)}", place, row.aside?.let(::asideWords), files)
}

private fun Reader.fileWords(file: PhotoRow): String = when (val place = file.place) {
    is PhotoPlace.Part -> words(if (file.sound) "error-sound-stopped" else "error-photo-stopped", "percent" to place.percent.toInt())
    PhotoPlace.OnPhone, PhotoPlace.AtShop -> words("where-on-phone")
}

private fun Reader.asideWords(aside: Aside): String = words("aside-${asideKey(aside)}")
