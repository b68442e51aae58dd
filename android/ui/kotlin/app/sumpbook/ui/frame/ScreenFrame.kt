package app.sumpbook.ui.frame

import androidx.compose.foundation.ScrollState
import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.Spacer
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.safeDrawingPadding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.rememberScrollState
import androidx.compose.foundation.verticalScroll
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.control.Gap
import app.sumpbook.ui.control.SecondaryRow
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.words.LocalOwnWay

/** The parts of a screen, in the order a thumb and an eye have them. */
class Parts(
    val header: @Composable () -> Unit,
    val strips: @Composable ColumnScope.() -> Unit,
    val content: @Composable ColumnScope.() -> Unit,
    val secondary: (@Composable () -> Unit)?,
    val main: (@Composable () -> Unit)?,
)

/**
 * The frame of every screen: header, strips, the one part that scrolls, the secondary row, the main button. What scrolls
 * ends above what is fixed and never slides under it. Lying down, the buttons stand beside it at the thumb's side. With
 * large text strips and secondary row scroll too: else nothing would be left for the rows.
 */
@Composable
fun ScreenFrame(
    header: @Composable () -> Unit,
    main: (@Composable () -> Unit)? = null,
    strips: @Composable ColumnScope.() -> Unit = {},
    secondary: (@Composable () -> Unit)? = null,
    scroll: ScrollState = rememberScrollState(),
    seen: Seen? = null,
    content: @Composable ColumnScope.() -> Unit,
) {
    val parts = Parts(header, strips, content, secondary, main)
    BoxWithConstraints(Modifier.fillMaxSize().background(LocalTokens.current.paper).safeDrawingPadding()) {
        val margin = if (maxWidth < NARROW) 8.dp else 16.dp
        if (maxWidth > maxHeight) Lying(parts, scroll, seen, margin) else Standing(parts, scroll, seen, margin)
    }
}

@Composable
private fun Standing(parts: Parts, scroll: ScrollState, seen: Seen?, margin: Dp) {
    Column(Modifier.fillMaxSize().padding(horizontal = margin)) {
        val large = LocalDensity.current.fontScale >= LARGE
        Body(parts, scroll, seen, Modifier.weight(1f), secondary = large)
        // The main button and its reason keep their place whatever else there is.
        Buttons(parts, secondary = !large)
        Spacer(Modifier.height(12.dp))
    }
}

@Composable
private fun Lying(parts: Parts, scroll: ScrollState, seen: Seen?, margin: Dp) {
    val left = LocalOwnWay.current.leftThumb
    Row(Modifier.fillMaxSize().padding(margin), Arrangement.spacedBy(16.dp)) {
        if (left) Beside(parts)
        Column(Modifier.weight(1f).fillMaxHeight()) { Body(parts, scroll, seen, Modifier.weight(1f), secondary = false) }
        if (!left) Beside(parts)
    }
}

@Composable
private fun Beside(parts: Parts) {
    // More buttons than the phone is high when it lies: they scroll, from the main one up.
    Column(Modifier.width(BESIDE).fillMaxHeight().verticalScroll(rememberScrollState(), reverseScrolling = true), Arrangement.Bottom) {
        Buttons(parts, secondary = true)
    }
}

@Composable
private fun ColumnScope.Body(parts: Parts, scroll: ScrollState, seen: Seen?, weight: Modifier, secondary: Boolean) {
    val large = LocalDensity.current.fontScale >= LARGE
    Spacer(Modifier.height(4.dp))
    parts.header()
    Spacer(Modifier.height(4.dp))
    if (!large) Strips(parts)
    Column(weight.fillMaxWidth().verticalScroll(scroll)) {
        Column(if (seen == null) Modifier.fillMaxWidth() else Modifier.fillMaxWidth().holdsRows(seen), Arrangement.spacedBy(Gap)) {
            if (large) Strips(parts)
            parts.content(this)
            if (secondary) parts.secondary?.let { row -> SecondaryRow { row() } }
        }
    }
    Spacer(Modifier.height(8.dp))
}

@Composable
private fun Strips(parts: Parts) {
    Column(Modifier.fillMaxWidth().padding(bottom = Gap), Arrangement.spacedBy(4.dp)) { parts.strips(this) }
}

@Composable
private fun Buttons(parts: Parts, secondary: Boolean) {
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(Gap)) {
        if (secondary) parts.secondary?.let { row -> SecondaryRow { row() } }
        parts.main?.invoke()
    }
}

/** Below this width margins shrink. */
private val NARROW = 360.dp

/** The width of the buttons when the phone lies. */
private val BESIDE = 296.dp

/** From this size of text on strips and secondary row scroll. */
private const val LARGE = 1.5f
