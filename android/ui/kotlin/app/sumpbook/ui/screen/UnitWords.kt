package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.unit.dp
import app.sumpbook.core.LockState
import app.sumpbook.core.News
import app.sumpbook.core.PartNow
import app.sumpbook.core.PreTripNow
import app.sumpbook.core.RoadAir
import app.sumpbook.core.keyOfLock
import app.sumpbook.core.keyOfPreTrip
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.mark.PairLook
import app.sumpbook.ui.mark.PairMark
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/** Road, air or an outlet in words: what, and since when and why where it is locked. */
data class PartWords(val what: String, val why: List<String>, val locked: Boolean)

/** The same in one line: "ROAD: LOCKED Tue 07:02. Mirrors, left: cracked, Amos Tillery". */
fun PartWords.inALine(): String = (listOf(what) + why).joinToString(". ")

/** Road, then air, then the outlets that are locked. */
fun Reader.roadAirWords(of: RoadAir): List<PartWords> = (listOf(of.road, of.air) + of.outlets).map(::partWords)

/** A part that can be locked, in words. */
fun Reader.partWords(part: PartNow): PartWords {
    val state = words(keyOfLock(part.state))
    val since = part.since?.takeIf { part.state != LockState.NO_LOCK_ON_RECORD }?.let { " ${moments.at(it)}" }.orEmpty()
    val why = part.why.map { one ->
        val word = one.word?.let { ": ${choice(it)}" }.orEmpty()
        val by = one.by?.let { ", $it" }.orEmpty()
        "${item(one.item, one.place)}$word$by"
    }
    return PartWords("${part(part.part)}: $state$since", why, part.state == LockState.LOCKED)
}

/** How old the shop's news is; when it is old, that a lock may be unknown here. */
fun Reader.newsWords(news: News): List<String> {
    val heard = news.heard
    val told = if (heard == null) words("news-never") else words("news-heard", "when" to moments.at(heard))
    return if (news.old) listOf(told, words("news-old")) else listOf(told)
}

/** Where a pre-trip stands. */
fun Reader.preTripWords(now: PreTripNow): String {
    val key = keyOfPreTrip(now)
    return when (now) {
        PreTripNow.NotStarted -> words(key)
        is PreTripNow.UnderWay -> words(key, "stop" to (now.at?.toString() ?: now.stop ?: "1"), "answered" to now.answered)
        is PreTripNow.Covers -> words(key, "by" to now.by.orEmpty(), "when" to moments.at(now.from))
        is PreTripNow.Ended -> words(key, "by" to now.by.orEmpty(), "when" to moments.at(now.at))
    }
}

/** The pair mark, and beside it road and air in words, each by itself. */
@Composable
fun RoadAirPart(look: PairLook, parts: List<PartWords>) {
    val words = @Composable { modifier: Modifier -> Column(modifier, Arrangement.spacedBy(4.dp)) { parts.forEach { PartLine(it) } } }
    // Beside the mark large text has no room for a word.
    if (LocalDensity.current.fontScale >= 1.5f) {
        Column(verticalArrangement = Arrangement.spacedBy(8.dp)) {
            PairMark(look)
            words(Modifier)
        }
    } else {
        Row(horizontalArrangement = Arrangement.spacedBy(12.dp)) {
            PairMark(look, times = 0.75f)
            words(Modifier.weight(1f))
        }
    }
}

/** One part, with why. */
@Composable
fun PartLine(part: PartWords) {
    Column {
        Text(part.what, style = if (part.locked) LocalType.current.strong else LocalType.current.text)
        part.why.forEach { Text(it, style = LocalType.current.help, color = LocalTokens.current.soft) }
    }
}
