package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableLongStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.res.pluralStringResource
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.NotSo
import app.sumpbook.ui.control.Gap
import app.sumpbook.ui.control.HoldRing
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.frame.Seen
import app.sumpbook.ui.frame.seenAs
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.minutesAndSeconds
import kotlinx.coroutines.delay

/** What the step is called. */
@Composable
fun StepHead(step: StepWords, rows: Seen) {
    val type = LocalType.current
    // At the largest sizes a title would break its longest word.
    Text(step.name, Modifier.seenAs("name", rows).semantics { heading() }, style = if (LocalDensity.current.fontScale > 1.5f) type.heading else type.title)
}

/** What is so when it is done, the unit's own valves by name, its caution, and its time. */
@Composable
fun ColumnScope.StepBody(step: StepWords, rows: Seen, key: String, time: Boolean) {
    val type = LocalType.current
    Column(Modifier.seenAs("so", rows), Arrangement.spacedBy(Gap)) {
        Text(step.ok, style = type.heading)
        step.row.names.forEach { Text(it, style = type.line) }
    }
    step.caution?.let { Strip(it, Modifier.seenAs("caution", rows)) }
    // Told for the first times; the caution comes before it.
    step.hint?.let { Text(it, style = type.text, color = LocalTokens.current.soft) }
    step.row.everyS?.let { Text(pluralStringResource(R.plurals.steps_every, it.toInt() / 60, it.toInt() / 60), style = type.text) }
    step.row.dwellS?.takeIf { time }?.let { Dwell(it.toLong() * 1_000, step.row.within, key) }
}

/** The time of a step, counted from its opening on a clock that goes on through sleep: the most it may take, or the least. */
@Composable
private fun Dwell(ofMs: Long, within: Boolean, key: String) {
    val handset = LocalDesk.current.handset
    val began by rememberSaveable(key) { mutableLongStateOf(handset.ticks()) }
    var now by remember(key) { mutableLongStateOf(handset.ticks()) }
    LaunchedEffect(key) {
        do {
            now = handset.ticks()
            delay(TICK_MS)
        } while (now - began < ofMs)
        handset.buzz()
    }
    val left = (ofMs - (now - began)).coerceAtLeast(0)
    val says = stringResource(if (within) R.string.steps_at_most else R.string.steps_at_least, minutesAndSeconds(ofMs))
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(8.dp), Alignment.CenterHorizontally) {
        HoldRing(left, ofMs, says, side = 120.dp)
        Text(says, style = LocalType.current.line)
    }
    if (within && left == 0L) Strip(stringResource(R.string.steps_over, minutesAndSeconds(ofMs)), heavy = true)
}

/** What is not so, in the step's own words, of which hose, and what comes of it before anything is kept. */
@Composable
fun ColumnScope.NotSoPart(step: StepWords, chosen: NotSoWords?, choose: (String) -> Unit, place: String?, at: (String) -> Unit) {
    val type = LocalType.current
    Text(step.stops, style = type.text)
    if (step.notSo.isNotEmpty()) Asked(stringResource(R.string.steps_what_not_so), step.notSo.map { it.row.word to it.words }, chosen?.row?.word, choose)
    if (chosen != null && step.asksPlace(chosen)) Asked(stringResource(R.string.steps_which_hose), step.row.places.map { it to it }, place, at)
    when (chosen?.row?.means) {
        null -> Unit
        NotSo.Wait -> Strip(stringResource(R.string.steps_means_wait))
        NotSo.Mark -> Strip(stringResource(R.string.steps_means_mark))
        NotSo.Refuse -> Strip(stringResource(R.string.steps_means_refuse), heavy = true)
        NotSo.NoDriving -> Strip(stringResource(R.string.steps_means_no_driving), heavy = true)
        is NotSo.Lock -> {
            Strip(locksUntilCertified(chosen.locks) ?: stringResource(R.string.defect_locks_nothing), heavy = chosen.locks.isNotEmpty())
            Text(stringResource(R.string.tell_the_shop), style = type.text)
        }
    }
}

/** The figures on the ring change by seconds. */
private const val TICK_MS = 200L
