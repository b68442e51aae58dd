package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.saveable.Saver
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.Glass
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.GlassSteps
import app.sumpbook.ui.control.SightGlass
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.theme.LocalType

/** What was given of a glass while its screen was open, and what was said of its standing still. */
data class GlassGiven(val glass: Glass? = null, val stopped: Boolean? = null) {
    companion object {
        private const val BELOW = -1
        private const val ABOVE = 101

        /** Kept when the system ends the app in the background. */
        val Saver = Saver<GlassGiven, List<Int?>>(
            save = { listOf(numberOf(it.glass), it.stopped?.compareTo(false)) },
            restore = { GlassGiven(glassOf(it[0]), it[1]?.let { said -> said > 0 }) },
        )

        private fun numberOf(glass: Glass?): Int? = when (glass) {
            null -> null
            is Glass.Percent -> glass.v1.toInt()
            Glass.BelowView -> BELOW
            Glass.AboveView -> ABOVE
        }

        private fun glassOf(number: Int?): Glass? = when (number) {
            null -> null
            BELOW -> Glass.BelowView
            ABOVE -> Glass.AboveView
            else -> Glass.Percent(number.toUByte())
        }
    }
}

/** What must be known before the glass is read: whether it runs, how long it stood, what this level does. */
@Composable
fun GlassStrips(view: GlassView, wait: Boolean = true) {
    if (wait) view.wait.forEach { Strip(it) }
    view.rose?.let { Strip(it) }
    locksUntilCertified(view.locks)?.let { Strip(it, heavy = true) }
}

/** The question nobody's record answers, the glass, and the steps beside its drag. */
@Composable
fun GlassPart(view: GlassView, given: GlassGiven, asks: Boolean = view.asks, change: (GlassGiven) -> Unit) {
    if (asks) {
        Chips {
            Chip(stringResource(R.string.stopped_yes), given.stopped == true) { change(given.copy(stopped = true)) }
            Chip(stringResource(R.string.no), given.stopped == false) { change(given.copy(stopped = false)) }
        }
    }
    SightGlass(given.glass, view.middle) { change(given.copy(glass = it)) }
    Text(listOfNotNull(view.given, view.level).joinToString(", "), style = LocalType.current.heading)
    GlassSteps(given.glass) { change(given.copy(glass = it)) }
}
