package app.sumpbook.ui.frame

import androidx.compose.foundation.ScrollState
import androidx.compose.foundation.gestures.BringIntoViewSpec
import androidx.compose.ui.Modifier
import androidx.compose.ui.layout.layout
import androidx.compose.ui.unit.dp

/** So far the ring of the focus reaches over what has it. */
internal val Ring = 6.dp

/** What is scrolled ends a ring below its last row, so that the ring is whole there. What fits stays as it is. */
internal fun Modifier.ringAtTheEnd(scroll: ScrollState): Modifier = layout { measurable, constraints ->
    val rows = measurable.measure(constraints)
    val more = if (scroll.viewportSize in 1..<rows.height) Ring.roundToPx() else 0
    layout(rows.width, rows.height + more) { rows.placeRelative(0, 0) }
}

/** What is brought into sight has its ring with it, so many pixels wide. */
internal class WithItsRing(private val ring: Float) : BringIntoViewSpec {
    override fun calculateScrollDistance(offset: Float, size: Float, containerSize: Float): Float =
        super.calculateScrollDistance(offset - ring, size + 2 * ring, containerSize)
}
