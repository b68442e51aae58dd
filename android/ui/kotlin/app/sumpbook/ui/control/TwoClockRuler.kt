package app.sumpbook.ui.control

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.mark.Clock
import app.sumpbook.ui.mark.RunsOut
import app.sumpbook.ui.mark.inDp
import app.sumpbook.ui.mark.ruler
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/**
 * The two clocks of a task, both running to one post. The words are text; only the tracks scale with the width. What
 * is read is one sentence, so that nobody has to put a drawing together from its parts.
 *
 * @param hours the hours clock; none: the task has none
 * @param days the calendar clock; none: the task has none
 * @param runsOut when the hours run out at this pace, on the calendar's scale
 * @param hoursWords over the hours track
 * @param daysWords under the calendar track
 * @param says all of it in one sentence
 */
@Composable
fun TwoClockRuler(
    hours: Clock?,
    days: Clock?,
    runsOut: RunsOut?,
    hoursWords: String?,
    daysWords: String?,
    says: String,
    modifier: Modifier = Modifier,
) {
    val tokens = LocalTokens.current
    val type = LocalType.current
    Column(modifier.fillMaxWidth().clearAndSetSemantics { contentDescription = says }) {
        if (hoursWords != null) {
            Text(hoursWords, style = if (hours?.nearer == true) type.helpStrong else type.help, color = tokens.ink)
        }
        BoxWithConstraints(Modifier.fillMaxWidth()) {
            val times = maxWidth.value / RULER_WIDE
            // Forecast and tracks stand in a band of their own height; only x stretches.
            Canvas(Modifier.fillMaxWidth().height(if (runsOut == null) 64.dp else 78.dp)) {
                inDp { ruler(hours, days, runsOut, times, tokens) }
            }
        }
        if (daysWords != null) {
            Text(daysWords, style = if (days?.nearer == true) type.helpStrong else type.help, color = tokens.ink)
        }
    }
}

private const val RULER_WIDE = 328f
