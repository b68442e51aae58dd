package app.sumpbook.ui.frame

import androidx.compose.foundation.ScrollState
import androidx.compose.foundation.relocation.BringIntoViewRequester
import androidx.compose.foundation.relocation.bringIntoViewRequester
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.runtime.snapshotFlow
import androidx.compose.runtime.staticCompositionLocalOf
import androidx.compose.ui.Modifier
import app.sumpbook.ui.theme.LocalType

/**
 * What of the bar at the thumb stays there. Where all of it would leave the page too little, only the main button does: the
 * secondary row and the reason stand at the end of the page, in the same order, and a press that is too early leads to the
 * reason. It does not come back while the screen is open: nothing moves because a digit was the last one.
 */
@Stable
internal class AtTheThumb {
    /** Only the main button stays. */
    var crowded by mutableStateOf(false)

    /** Why the main button may not be pressed, where that stands at the end of the page. */
    var reason by mutableStateOf<String?>(null)

    private val sight = BringIntoViewRequester()

    /** Leads to the reason. */
    suspend fun lead() = sight.bringIntoView()

    /** The reason, at the end of the page. */
    @Composable
    fun Reason() {
        val words = reason ?: return
        Text(words, Modifier.bringIntoViewRequester(sight), style = LocalType.current.strong)
    }
}

/** Keys that do not fit whole are worth more than what stands under them. */
@Composable
internal fun MakesRoomForKeys(scroll: ScrollState, thumb: AtTheThumb) = LaunchedEffect(scroll, thumb) {
    snapshotFlow { scroll.viewportSize > 0 && scroll.maxValue in 1..<Int.MAX_VALUE }.collect { if (it) thumb.crowded = true }
}

/** Where a main button finds out whether its reason stands with it. */
internal val LocalAtTheThumb = staticCompositionLocalOf<AtTheThumb?> { null }
