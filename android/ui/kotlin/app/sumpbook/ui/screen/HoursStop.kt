package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable

/** The stop at the display: its lines, and the meter's figure typed on it. */
@Composable
fun HoursStop(open: OpenStop) {
    StopFrame(open, { MainOfStop(open) }) { hints -> open.view.lines.forEach { LineOf(it, open, hints) } }
}
