package app.sumpbook.ui.desk

import androidx.compose.runtime.Immutable
import androidx.compose.runtime.staticCompositionLocalOf
import app.sumpbook.ui.words.OwnWay
import kotlinx.coroutines.flow.StateFlow

/** Which of the two grounds. */
enum class Light { AUTO, LIGHT, DARK }

/**
 * How this phone is set for whoever holds it. Nothing of it is ever part of a record.
 *
 * @property way language, units, thumb
 * @property text how much larger text is at the least: 1, 1.3, 1.6 or 2; the system's own size counts when it is more
 * @property high high contrast
 * @property light the ground
 * @property buzz timers buzz
 * @property shopNumber whom "Call the shop" calls; empty: nobody
 */
@Immutable
data class Settled(
    val way: OwnWay = OwnWay(),
    val text: Float = 1f,
    val high: Boolean = false,
    val light: Light = Light.AUTO,
    val buzz: Boolean = true,
    val shopNumber: String = "",
)

/** Keeps how this phone is set. Each platform has its own. */
interface Settings {
    /** As it is set now. */
    val now: StateFlow<Settled>

    /** Sets it, from now on. */
    fun settle(to: Settled)
}

/** The settings in use; none where nothing can be set. */
val LocalSettings = staticCompositionLocalOf<Settings?> { null }
