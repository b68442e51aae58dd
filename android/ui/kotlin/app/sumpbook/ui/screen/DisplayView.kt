package app.sumpbook.ui.screen

import app.sumpbook.core.AckRow
import app.sumpbook.core.DisplayScreen
import app.sumpbook.core.NoteKind
import app.sumpbook.core.NoteRow
import app.sumpbook.ui.desk.Reader

/** A note of the display in words: what it shows, who knows of it. */
data class NoteWords(val row: NoteRow, val title: String, val under: String, val known: List<String>)

/** The display of a unit, with its words. */
data class DisplayView(
    val record: DisplayScreen,
    val kinds: List<Pair<NoteKind, String>>,
    val note: NoteWords?,
    val open: List<NoteWords>,
    val stopped: String?,
    /** The shop's own words of each kind it has set some for. */
    val shopSays: Map<NoteKind, String>,
    /** It has set none. */
    val noWords: String,
    /** That the shop was told is not yet at the shop: what "told" means until then. */
    val toldHere: String?,
    val main: String,
    val whyNot: String?,
)

/** The display notes of a unit; with [note], that one to be answered. */
fun Reader.displayView(unit: String, note: String): DisplayView {
    val record = phone.display(unit, note.ifEmpty { null })
    return DisplayView(
        record = record,
        kinds = NoteKind.entries.map { it to noteKind(it) },
        note = record.note?.let(::noteWords),
        open = record.open.map(::noteWords),
        stopped = if (record.stoppedToday > 0u) words("display-stopped-again", "count" to record.stoppedToday) else null,
        shopSays = record.shopSays.associate { it.what to it.words },
        noWords = words("display-no-words"),
        toldHere = if (record.noteOnlyHere) words("ack-told-here") else null,
        main = label(record.main, record.door),
        whyNot = record.main.whyNot?.let(::whyNot),
    )
}

/** A note, with who answered it. */
fun Reader.noteWords(row: NoteRow): NoteWords = NoteWords(
    row = row,
    title = "${noteKind(row.what)}: ${row.asShown}",
    under = listOfNotNull(moments.at(row.at), row.by).joinToString(", "),
    known = (listOfNotNull(row.told, row.first).distinctBy { it.id } + row.others).map(::ackWords),
)

private fun Reader.noteKind(kind: NoteKind): String = words("note-${kind.name.lowercase()}")

private fun Reader.ackWords(ack: AckRow): String {
    val what = words(if (ack.toldShop) "ack-told" else "ack-seen")
    val early = if (ack.beforeNote) words("ack-before-note") else null
    return listOfNotNull(what, ack.by, moments.at(ack.at), early).joinToString(", ")
}
