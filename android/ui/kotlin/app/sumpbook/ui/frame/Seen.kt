package app.sumpbook.ui.frame

import androidx.compose.foundation.ScrollState
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateMapOf
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.runtime.snapshotFlow
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.layout.LayoutCoordinates
import androidx.compose.ui.layout.onGloballyPositioned

/** From where to where a row lies in what is scrolled, in pixels. */
private data class Reach(val top: Float, val bottom: Float)

/**
 * Which rows have lain whole on the screen: only what was there to be seen may be answered. A row that is taller than the
 * frame counts when its top and its bottom were both there.
 */
@Stable
class Seen(val scroll: ScrollState) {
    private val rows = mutableStateMapOf<String, Reach>()
    private val tops = mutableSetOf<String>()
    private val bottoms = mutableSetOf<String>()
    private var content: LayoutCoordinates? = null

    /** Rows that have been whole in the frame, by id. */
    var whole by mutableStateOf(emptySet<String>())
        private set

    internal fun content(at: LayoutCoordinates) {
        content = at
    }

    internal fun row(id: String, at: LayoutCoordinates) {
        val within = content?.takeIf { it.isAttached && at.isAttached } ?: return
        val top = within.localPositionOf(at, Offset.Zero).y
        rows[id] = Reach(top, top + at.size.height)
        // At once: what fits is never shown as not seen.
        look()
    }

    /** How many rows have not been whole yet. */
    val left: Int get() = rows.keys.count { it !in whole }

    /** Where the rows lie, to be followed. */
    internal fun places(): Map<String, Any> = rows.toMap()

    /** Looks again: what lies whole in the frame now is seen for good. */
    internal fun look() {
        val from = scroll.value - HAIR
        val to = scroll.value + scroll.viewportSize + HAIR
        if (scroll.viewportSize <= 0) return
        for ((id, reach) in rows) {
            if (reach.top in from..to) tops += id
            if (reach.bottom in from..to) bottoms += id
        }
        val tall = scroll.viewportSize
        val now = rows.filter { (id, reach) ->
            val whole = reach.top >= from && reach.bottom <= to
            whole || (reach.bottom - reach.top > tall && id in tops && id in bottoms)
        }.keys
        if (!whole.containsAll(now)) whole = whole + now
    }

    /** Turns to the next rows that have not been whole yet. */
    suspend fun turn() {
        val next = rows.filterKeys { it !in whole }.values.minByOrNull { it.top } ?: return
        val page = (scroll.viewportSize * 0.9f).toInt()
        val to = if (next.bottom - next.top > scroll.viewportSize) scroll.value + page else next.top.toInt()
        scroll.scrollTo(maxOf(minOf(to, scroll.maxValue), minOf(scroll.value + 1, scroll.maxValue)))
    }

    private companion object {
        /** Rounding of a pixel is no hiding. */
        const val HAIR = 1f
    }
}

/** Follows what is seen of what is scrolled. */
@Composable
fun rememberSeen(scroll: ScrollState): Seen {
    val seen = remember(scroll) { Seen(scroll) }
    LaunchedEffect(seen) {
        snapshotFlow { Triple(scroll.value, scroll.viewportSize, seen.places()) }.collect { seen.look() }
    }
    return seen
}

/** This row counts as seen once it was whole on the screen. */
fun Modifier.seenAs(id: String, seen: Seen): Modifier = onGloballyPositioned { seen.row(id, it) }

/** What is scrolled: rows are measured in it. */
fun Modifier.holdsRows(seen: Seen): Modifier = onGloballyPositioned { seen.content(it) }
