package app.sumpbook.ui.frame

import androidx.compose.foundation.ExperimentalFoundationApi
import androidx.compose.foundation.ScrollState
import androidx.compose.foundation.background
import androidx.compose.foundation.gestures.LocalBringIntoViewSpec
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
import androidx.compose.foundation.layout.widthIn
import androidx.compose.foundation.rememberScrollState
import androidx.compose.foundation.verticalScroll
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.getValue
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.layout.onSizeChanged
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
    val low: Boolean,
)

/**
 * The frame of every screen: header, strips, the one part that scrolls, the secondary row, the main button. What scrolls
 * ends above what is fixed and never slides under it; a line tells that it goes on. Lying down, the buttons stand beside it
 * at the thumb's side. With large text strips and secondary row scroll too, on a phone that lies the strips do, and where
 * the bar at the thumb would still take too much only the main button stays: else nothing would be left for the rows.
 *
 * @param low what scrolls ends at the thumb and is filled upwards: keys stay under it whatever is said above them
 */
@Composable
fun ScreenFrame(
    header: @Composable () -> Unit,
    main: (@Composable () -> Unit)? = null,
    strips: @Composable ColumnScope.() -> Unit = {},
    secondary: (@Composable () -> Unit)? = null,
    scroll: ScrollState = rememberScrollState(),
    seen: Seen? = null,
    low: Boolean = false,
    content: @Composable ColumnScope.() -> Unit,
) {
    val parts = Parts(header, strips, content, secondary, main, low)
    BoxWithConstraints(Modifier.fillMaxSize().background(LocalTokens.current.paper).safeDrawingPadding(), Alignment.TopCenter) {
        val scale = LocalDensity.current.fontScale
        val margin = if (maxWidth < NARROW) 8.dp else 16.dp
        val thumb = remember(maxWidth, maxHeight, scale) { AtTheThumb() }
        val most = if (scale >= LARGE) maxHeight / 3 else maxHeight * 0.4f
        val room = Room(maxHeight < LOW || scale >= LARGE, scale >= LARGE || thumb.crowded, thumb, most)
        if (low) MakesRoomForKeys(scroll, thumb)
        // On a tablet a line stays as long as an eye follows it, and the buttons stay beside it. Larger text has less room for
        // its words than a narrow phone has for smaller ones.
        if (maxWidth > maxHeight) Lying(parts, scroll, seen, margin, room) else Standing(parts, scroll, seen, if (scale > LARGER) 8.dp else margin, room)
    }
}

/**
 * What scrolls along with the rows, so that something is left for them.
 *
 * @property most how high the bar at the thumb may be when the phone stands
 */
private class Room(val strips: Boolean, val secondary: Boolean, val thumb: AtTheThumb, val most: Dp)

@Composable
private fun Standing(parts: Parts, scroll: ScrollState, seen: Seen?, margin: Dp, room: Room) {
    Column(Modifier.widthIn(max = WIDEST).fillMaxSize().padding(horizontal = margin)) {
        Body(parts, scroll, seen, Modifier.weight(1f), room)
        // The main button keeps its place whatever else there is.
        Buttons(parts, room.thumb, room.most, secondary = !room.secondary)
        Spacer(Modifier.height(12.dp))
    }
}

@Composable
private fun Lying(parts: Parts, scroll: ScrollState, seen: Seen?, margin: Dp, room: Room) {
    val left = LocalOwnWay.current.leftThumb
    Row(Modifier.widthIn(max = WIDEST + BESIDE).fillMaxSize().padding(horizontal = margin, vertical = margin - Ring), Arrangement.spacedBy(16.dp)) {
        if (left) Beside(parts, room.thumb)
        Column(Modifier.weight(1f).fillMaxHeight().padding(vertical = Ring)) {
            Body(parts, scroll, seen, Modifier.weight(1f), Room(room.strips, room.thumb.crowded, room.thumb, room.most))
        }
        if (!left) Beside(parts, room.thumb)
    }
}

@Composable
private fun Beside(parts: Parts, thumb: AtTheThumb) {
    BoxWithConstraints(Modifier.width(BESIDE).fillMaxHeight()) {
        // Keys in the largest text are higher than a phone that lies: they scroll, from the last one up.
        Column(Modifier.fillMaxSize().verticalScroll(rememberScrollState(), reverseScrolling = true).padding(vertical = Ring), Arrangement.Bottom) {
            Buttons(parts, thumb, this@BoxWithConstraints.maxHeight - Ring * 2, secondary = !thumb.crowded)
        }
    }
}

@OptIn(ExperimentalFoundationApi::class)
@Composable
private fun ColumnScope.Body(parts: Parts, scroll: ScrollState, seen: Seen?, weight: Modifier, room: Room) {
    Spacer(Modifier.height(4.dp))
    parts.header()
    Spacer(Modifier.height(if (room.strips) Gap else 4.dp))
    if (!room.strips) Strips(parts, Modifier.padding(bottom = Gap))
    val ring = with(LocalDensity.current) { Ring.toPx() }
    CompositionLocalProvider(LocalBringIntoViewSpec provides remember(ring) { WithItsRing(ring) }) {
        Column(weight.fillMaxWidth().verticalScroll(scroll).ringAtTheEnd(scroll), if (parts.low) Arrangement.Bottom else Arrangement.Top) {
            Column(if (seen == null) Modifier.fillMaxWidth() else Modifier.fillMaxWidth().holdsRows(seen), Arrangement.spacedBy(Gap)) {
                if (room.strips) Strips(parts, Modifier)
                parts.content(this)
                if (room.secondary) parts.secondary?.let { row -> SecondaryRow { row() } }
                room.thumb.Reason()
            }
        }
    }
    // What scrolls is pressed as well: it keeps the same distance.
    GoesOn(scroll)
}

@Composable
private fun Strips(parts: Parts, modifier: Modifier) {
    Column(modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp)) { parts.strips(this) }
}

/** @param most what is higher than this leaves the page too little */
@Composable
private fun Buttons(parts: Parts, thumb: AtTheThumb, most: Dp, secondary: Boolean) {
    val limit = with(LocalDensity.current) { most.roundToPx() }
    Column(Modifier.fillMaxWidth().onSizeChanged { if (it.height > limit) thumb.crowded = true }, Arrangement.spacedBy(Gap)) {
        if (secondary) parts.secondary?.let { row -> SecondaryRow { row() } }
        CompositionLocalProvider(LocalAtTheThumb provides thumb) { parts.main?.invoke() }
    }
}

/** Below this width margins shrink. */
private val NARROW = 360.dp

/** Above this width nothing grows any more. */
private val WIDEST = 640.dp

/** Below this height strips scroll. */
private val LOW = 480.dp

/** The width of the buttons when the phone lies. */
private val BESIDE = 296.dp

/** Above this size of text margins shrink on a phone that stands. */
private const val LARGER = 1.15f

/** From this size of text on strips and secondary row scroll. */
private const val LARGE = 1.5f
