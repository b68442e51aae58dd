package app.sumpbook.ui.words

import androidx.compose.runtime.Immutable
import androidx.compose.runtime.staticCompositionLocalOf

/**
 * How this person reads and holds the phone. Changing it never rewrites a record.
 *
 * @property language `en` or `es`
 * @property metric volumes in millilitres and litres instead of quarts
 * @property leftThumb what is pressed lies at the left
 */
@Immutable
data class OwnWay(val language: String = "en", val metric: Boolean = false, val leftThumb: Boolean = false)

/** The way in force. */
val LocalOwnWay = staticCompositionLocalOf { OwnWay() }
