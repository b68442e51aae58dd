package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
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
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.Figure
import app.sumpbook.core.How
import app.sumpbook.core.ItemFigure
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.minutesAndSeconds
import kotlinx.coroutines.delay

/** The build-up of the brakes' air: a tap at 85, a tap at 100, the seconds between on this phone's clock; then the rest. */
@Composable
fun BuildUpStop(open: OpenStop) {
    val handset = LocalDesk.current.handset
    val line = open.view.lines.firstOrNull { it.row.answer == null && it.row.figure?.unit == "s" }
    // Turned, or ended by the system, it goes on: the clock runs on by itself.
    var at85 by rememberSaveable { mutableStateOf<Long?>(null) }
    var now by remember { mutableLongStateOf(handset.ticks()) }
    val start = at85
    LaunchedEffect(start) {
        while (start != null) {
            now = handset.ticks()
            delay(TICK_MS)
        }
    }
    val main: @Composable () -> Unit = {
        when {
            line == null -> MainOfStop(open)
            start == null -> MainPress(stringResource(R.string.at_85)) {
                now = handset.ticks()
                at85 = now
            }
            else -> MainPress(stringResource(R.string.at_100)) {
                val ms = handset.ticks() - start
                open.measured(line, buildUp(line, ms), ms.coerceIn(0, UInt.MAX_VALUE.toLong()).toUInt())
            }
        }
    }
    StopFrame(open, main, {
        if (start != null && line != null) SecondaryButton(stringResource(R.string.start_again)) { at85 = null }
        if (line != null) SecondaryButton(stringResource(R.string.not_run)) { open.defect(line) }
    }) { hints ->
        open.view.lines.forEach { LineOf(it, open, hints) }
        if (start != null && line != null) {
            Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp), Alignment.CenterHorizontally) {
                Text(minutesAndSeconds(now - start), style = LocalType.current.figure)
                Text(stringResource(R.string.from_85_to_100), style = LocalType.current.help)
            }
        }
        line?.let { Limits(it.limits) }
    }
}

/** Seconds to a tenth, as the two taps had them. */
private fun buildUp(line: LineWords, ms: Long) = ItemFigure(Figure((ms + 50) / 100, 1u, line.row.figure?.unit ?: "s"), How.TIMED)

/** The figures change by seconds. */
private const val TICK_MS = 200L
