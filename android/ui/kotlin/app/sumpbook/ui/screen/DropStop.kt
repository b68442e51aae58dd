package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableLongStateOf
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.Figure
import app.sumpbook.core.How
import app.sumpbook.core.ItemFigure
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.HoldRing
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.theme.LocalType
import kotlinx.coroutines.delay

/** A leak test: sixty seconds on this phone's clock, then the drop by one tap. */
@Composable
fun DropStop(open: OpenStop) {
    val handset = LocalDesk.current.handset
    val line = open.view.lines.firstOrNull { it.row.answer == null && it.row.figure != null }
    // Turned, or ended by the system, it goes on: the clock runs on by itself.
    var began by rememberSaveable { mutableStateOf<Long?>(null) }
    var now by remember { mutableLongStateOf(handset.ticks()) }
    var more by remember { mutableStateOf(false) }
    val start = began
    val left = start?.let { TEST_MS - (now - it) }
    LaunchedEffect(start) {
        if (start == null) return@LaunchedEffect
        do {
            now = handset.ticks()
            delay(TICK_MS)
        } while (now - start < TEST_MS)
        handset.buzz()
    }
    fun begin() {
        now = handset.ticks()
        began = now
    }
    val main: @Composable () -> Unit = {
        when {
            line == null -> MainOfStop(open)
            start == null -> MainPress(stringResource(R.string.start_60)) { begin() }
            else -> MainPress(stringResource(R.string.drop_by_a_tap), stringResource(R.string.drop_in_60), whyAbove = false) {}
        }
    }
    StopFrame(open, main, {
        if (start != null && line != null) SecondaryButton(stringResource(R.string.start_again)) { begin() }
        if (start == null && line != null) SecondaryButton(stringResource(R.string.not_run)) { open.defect(line) }
    }) { hints ->
        // While the needle is watched the room is the chips'.
        open.view.lines.forEach { LineOf(it, open, hints && start == null) }
        if (start != null && line != null) {
            Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(12.dp), Alignment.CenterHorizontally) {
                Row(horizontalArrangement = Arrangement.spacedBy(12.dp), verticalAlignment = Alignment.CenterVertically) {
                    HoldRing(left ?: 0, TEST_MS, stringResource(R.string.seconds_left), side = 120.dp)
                    // A needle read sooner is scaled to its minute: it can tell a leak, and clears nobody.
                    if (left != null && left > 0) Text(stringResource(R.string.drop_scaled), Modifier.weight(1f), style = LocalType.current.help)
                }
                Text(stringResource(R.string.drop_in_60), Modifier.semantics { heading() }, style = LocalType.current.heading)
                Drops(more, { more = true }) { psi ->
                    open.measured(line, ItemFigure(Figure(psi.toLong(), 0u, line.row.figure?.unit ?: "psi"), How.CHOSEN), (now - start).coerceAtLeast(0).toUInt())
                }
            }
        }
        line?.let { Limits(it.limits) }
    }
}

/** The drops that are read most, each one tap; more only behind a tap. */
@Composable
private fun Drops(more: Boolean, showMore: () -> Unit, choose: (Int) -> Unit) {
    Chips {
        for (psi in 0..(if (more) MOST_PSI else FEW_PSI)) Chip(psi.toString(), chosen = false) { choose(psi) }
        if (!more) Chip(stringResource(R.string.more), chosen = false, onPress = showMore)
    }
}

private const val FEW_PSI = 6
private const val MOST_PSI = 20

/** How long the needle is watched. */
private const val TEST_MS = 60_000L

/** The figures on the ring change by seconds. */
private const val TICK_MS = 200L
