package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import app.sumpbook.core.BecameNow
import app.sumpbook.core.BecameRow
import app.sumpbook.core.Verdict
import app.sumpbook.ui.control.Gap
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.theme.LocalType

/** A defect this person told, and what became of it. */
data class BecameWords(val unit: String, val what: String, val became: String)

/** That in words. */
fun Reader.becameWords(row: BecameRow): BecameWords {
    val what = listOfNotNull("${row.door}, ${item(row.item, row.place)}", row.word?.let(::choice)).joinToString(": ")
    return BecameWords(row.unit, what, nowWords(row))
}

private fun Reader.nowWords(row: BecameRow): String = when (val now = row.now) {
    BecameNow.NotYetAtShop -> words("became-not-yet-at-shop")
    BecameNow.AtShop -> words("became-at-shop")
    is BecameNow.Visit -> words("became-visit", "day" to moments.day(now.day))
    is BecameNow.WaitingForPart ->
        now.promised?.let { words("became-waiting-promised", "part" to now.part, "day" to moments.day(it)) } ?: words("became-waiting-for-part", "part" to now.part)
    is BecameNow.Certified -> {
        val verdict = words(if (now.verdict == Verdict.REPAIRED) "verdict-repaired" else "verdict-not-needed")
        val whoAndWhen = listOfNotNull(verdict, now.by, row.since?.let { moments.at(it) }).joinToString(", ")
        if (now.words.isEmpty()) whoAndWhen else "$whoAndWhen: '${now.words}'"
    }
}

/** What became of what one told: each leads to its unit. */
@Composable
fun Became(title: String, rows: List<BecameWords>, open: (String) -> Unit) {
    if (rows.isEmpty()) return
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(Gap)) {
        Text(title, Modifier.semantics { heading() }, style = LocalType.current.heading)
        rows.forEach { row -> Line(row.what, under = row.became) { open(row.unit) } }
    }
}
