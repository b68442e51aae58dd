package app.sumpbook.ui.control

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.focusable
import androidx.compose.foundation.gestures.awaitEachGesture
import androidx.compose.foundation.gestures.awaitFirstDown
import androidx.compose.foundation.interaction.MutableInteractionSource
import androidx.compose.foundation.interaction.collectIsFocusedAsState
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberUpdatedState
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.input.key.Key
import androidx.compose.ui.input.key.KeyEventType
import androidx.compose.ui.input.key.key
import androidx.compose.ui.input.key.onKeyEvent
import androidx.compose.ui.input.key.type
import androidx.compose.ui.input.pointer.changedToUpIgnoreConsumed
import androidx.compose.ui.input.pointer.pointerInput
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.CustomAccessibilityAction
import androidx.compose.ui.semantics.ProgressBarRangeInfo
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.customActions
import androidx.compose.ui.semantics.progressBarRangeInfo
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.semantics.setProgress
import androidx.compose.ui.semantics.stateDescription
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.Glass
import app.sumpbook.ui.mark.glass
import app.sumpbook.ui.mark.inDp
import app.sumpbook.ui.theme.LocalTokens
import kotlin.math.roundToInt

/**
 * The sight glass, drawn and touched: the level is dragged to where the oil stands. The first touch sets it, every
 * later one moves it, so that a thumb laid down does not change what was given. Steps are of 1 percent: in fives an
 * honest hand lands on 50 each day. The handle stands outside the glass, so that the thumb never hides the oil.
 *
 * @param given the level; none before the first touch, and nothing is drawn for it then
 * @param middle the band where the level belongs, in percent, both ends in it
 * @param onGive takes the level as dragged; none: the glass is only read
 */
@Composable
fun SightGlass(given: Glass?, middle: IntRange, modifier: Modifier = Modifier, onGive: ((Glass) -> Unit)? = null) {
    val tokens = LocalTokens.current
    val now by rememberUpdatedState(given)
    val give by rememberUpdatedState(onGive)
    val source = remember { MutableInteractionSource() }
    val focused by source.collectIsFocusedAsState()
    val name = stringResource(R.string.glass_name)
    val says = glassSays(given, middle)
    val below = stringResource(R.string.glass_below_view)
    val above = stringResource(R.string.glass_above_view)
    BoxWithConstraints(modifier.fillMaxWidth(), contentAlignment = Alignment.TopCenter) {
        val times = (maxWidth.value / GLASS_WIDE).coerceAtMost(1.4f)
        Canvas(
            Modifier.size((GLASS_WIDE * times).dp, (GLASS_HIGH * times).dp)
                .semantics {
                    contentDescription = name
                    stateDescription = says
                    if (onGive == null) return@semantics
                    progressBarRangeInfo = ProgressBarRangeInfo(percentOf(given)?.toFloat() ?: 0f, 0f..100f, steps = 99)
                    setProgress { onGive(percent(it)); true }
                    customActions = listOf(
                        CustomAccessibilityAction(below) { onGive(Glass.BelowView); true },
                        CustomAccessibilityAction(above) { onGive(Glass.AboveView); true },
                    )
                }
                .then(
                    if (onGive == null) Modifier
                    else Modifier
                        .onKeyEvent { event ->
                            val step = stepOf(event.key)
                            if (step == null || event.type != KeyEventType.KeyDown) return@onKeyEvent false
                            give?.invoke(moved(now, step))
                            true
                        }
                        .focusable(interactionSource = source)
                        .pointerInput(Unit) {
                            awaitEachGesture {
                                val down = awaitFirstDown()
                                down.consume()
                                val unit = density * times
                                val first = now ?: percent(levelAt(down.position.y / unit)).also { give?.invoke(it) }
                                val from = ends(first)
                                var last = first
                                while (true) {
                                    val change = awaitPointerEvent().changes.firstOrNull { it.id == down.id } ?: break
                                    if (change.changedToUpIgnoreConsumed()) break
                                    change.consume()
                                    val rise = (down.position.y - change.position.y) / unit / PER_PERCENT
                                    val to = percent(from + rise)
                                    // A hand that trembles by less than a step changes nothing.
                                    if (rise.roundToInt() != 0 || last != first) {
                                        if (to != last) give?.invoke(to)
                                        last = to
                                    }
                                }
                            }
                        },
                ),
        ) { inDp(times) { glass(given, middle, handle = onGive != null, focused, tokens) } }
    }
}

internal const val GLASS_WIDE = 328f
internal const val GLASS_HIGH = 240f

/** How high a percent of the glass stands in its box: y = 208 - 1.76 L. */
internal const val PER_PERCENT = 1.76f

private fun levelAt(y: Float): Float = (208f - y) / PER_PERCENT

private fun percent(level: Float): Glass = Glass.Percent(level.roundToInt().coerceIn(0, 100).toUByte())

/** The level in percent, where one was given that has a number. */
internal fun percentOf(glass: Glass?): Int? = (glass as? Glass.Percent)?.v1?.toInt()

/** Where dragging sets out from: out of view is an end of the glass. */
private fun ends(glass: Glass): Float = when (glass) {
    is Glass.Percent -> glass.v1.toFloat()
    Glass.BelowView -> 0f
    Glass.AboveView -> 100f
}

/** The level moved by so many percent; none given before: from the middle of the glass. */
internal fun moved(glass: Glass?, by: Int): Glass = percent((glass?.let(::ends) ?: 50f) + by)

private fun stepOf(key: Key): Int? = when (key) {
    Key.DirectionUp -> 1
    Key.DirectionDown -> -1
    Key.PageUp -> 5
    Key.PageDown -> -5
    else -> null
}

/** What the glass says: the level in words, against the middle band. */
@Composable
internal fun glassSays(given: Glass?, middle: IntRange): String {
    val level = percentOf(given)
    return when {
        given == null -> stringResource(R.string.glass_not_given)
        level == null && given == Glass.BelowView -> stringResource(R.string.glass_below_view)
        level == null -> stringResource(R.string.glass_above_view)
        level < middle.first -> stringResource(R.string.glass_under, level, middle.first, middle.last)
        level > middle.last -> stringResource(R.string.glass_over, level, middle.first, middle.last)
        else -> stringResource(R.string.glass_in_middle, level, middle.first, middle.last)
    }
}
