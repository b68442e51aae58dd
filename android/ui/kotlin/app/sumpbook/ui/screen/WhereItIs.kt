package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableIntStateOf
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.res.pluralStringResource
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.text
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.ShopTried
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.mark.WhereMark
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.LocalOwnWay
import kotlinx.coroutines.launch

/** Has the shop got it: every entry of this phone, and where it stands. */
@Composable
fun WhereItIs() {
    var daysBack by rememberSaveable { mutableIntStateOf(A_WEEK) }
    val shown by seen(daysBack) { whereView(daysBack) }
    val told = shown ?: return
    val view = (told as? Told.Got)?.it
    val back = LocalBackStack.current
    val desk = LocalDesk.current
    val scope = rememberCoroutineScope()
    var trying by remember { mutableStateOf(false) }
    var came by remember { mutableStateOf<Told<ShopTried>?>(null) }
    ScreenFrame(
        header = { TitleHeader(stringResource(R.string.where_it_is)) { back.back() } },
        strips = {
            if (told is Told.Refused) Strip(sentence(told.why), heavy = true)
            view?.stopped?.let { Strip(it, heavy = true) }
            came?.let { Strip(calls = true, words = outcome(it)) }
            view?.news?.forEach { Strip(it) }
            view?.tried?.forEach { Strip(it) }
        },
        secondary = { SecondaryButton(stringResource(R.string.hand_over)) { back.go(Place.HandOver()) } },
        main = view?.let {
            {
                MainPress(it.main, if (trying) stringResource(R.string.trying) else null) {
                    trying = true
                    came = null
                    scope.launch {
                        came = desk.exchangeOnce(TRY_MS)
                        trying = false
                    }
                }
            }
        },
    ) {
        view?.counts?.forEach { Row(horizontalArrangement = Arrangement.spacedBy(12.dp)) { WhereMark(it.where, times = LocalDensity.current.fontScale.coerceAtLeast(1f)); Text(it.words, style = LocalType.current.strong) } }
        view?.empty?.let { Text(it, style = LocalType.current.text) }
        view?.days?.forEach { Day(it) }
        if (view != null && daysBack < MOST_DAYS) SecondaryButton(stringResource(R.string.earlier_days)) { daysBack += A_WEEK }
    }
}

@Composable
private fun Day(day: DayWords) {
    val back = LocalBackStack.current
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(8.dp)) {
        Text(day.title, Modifier.padding(top = 8.dp).semantics { heading() }, style = LocalType.current.heading)
        day.rows.forEach { Entry(it) }
        // Written under the wrong unit: picked there, and moved.
        day.unit?.let { unit -> Line(stringResource(R.string.other_unit)) { back.go(Place.OtherUnit(unit)) } }
    }
}

@Composable
private fun Entry(entry: EntryWords) {
    val back = LocalBackStack.current
    // What is set aside opens: the whole reason, and what to do about it.
    val why = entry.why
    if (why != null) return Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(12.dp)) {
        WhereMark(entry.where, times = LocalDensity.current.fontScale.coerceAtLeast(1f))
        Line(entry.what, Modifier.weight(1f), under = (listOf("${entry.place}: $why") + entry.files.map { "${stringResource(if (it.sound) R.string.sound else R.string.photo)}: ${it.place}" }).joinToString("\n")) { back.go(Place.SetAside(entry.id)) }
    }
    Row(Modifier.fillMaxWidth().semantics(mergeDescendants = true) {}, Arrangement.spacedBy(12.dp)) {
        WhereMark(entry.where, times = LocalDensity.current.fontScale.coerceAtLeast(1f))
        Column(Modifier.weight(1f)) {
            Text(entry.what, style = LocalType.current.line)
            Text(entry.place, style = LocalType.current.help, color = LocalTokens.current.soft)
            entry.files.forEach { Text("${stringResource(if (it.sound) R.string.sound else R.string.photo)}: ${it.place}", style = LocalType.current.help, color = LocalTokens.current.soft) }
        }
    }
}

/** What came of turning to the shop. */
@Composable
private fun outcome(came: Told<ShopTried>): String = when (came) {
    is Told.Refused -> sentence(came.why)
    is Told.Got -> said(came.it).joinToString(" ")
}

@Composable
private fun said(tried: ShopTried): List<String> {
    val report = tried.report
    val language = LocalOwnWay.current.language
    val reached = report.acknowledged.toInt()
    return listOfNotNull(
        if (report.enrolled) pluralStringResource(R.plurals.reached_the_shop, reached, reached) else stringResource(R.string.not_let_in_yet),
        if (report.refused > 0u) pluralStringResource(R.plurals.not_taken, report.refused.toInt(), report.refused.toInt()) else null,
        if (report.photosLeft > 0u) pluralStringResource(R.plurals.photos_left, report.photosLeft.toInt(), report.photosLeft.toInt()) else null,
        if (!report.whole) stringResource(R.string.goes_on_by_itself) else null,
    ) + tried.sentences[language].orEmpty()
}

private const val A_WEEK = 7
private const val MOST_DAYS = 56

/** Somebody waits: less than a job takes. */
private const val TRY_MS = 30_000
