package app.sumpbook.ui.control

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.IntrinsicSize
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.widthIn
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberUpdatedState
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.Glass
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType
import kotlinx.coroutines.delay

/** Beside the drag: out of view below and above, and a step of 1 percent down and up; held, steps of 5. */
@Composable
fun GlassSteps(given: Glass?, modifier: Modifier = Modifier, onGive: (Glass) -> Unit) {
    val below = stringResource(R.string.glass_below_view)
    val above = stringResource(R.string.glass_above_view)
    if (LocalDensity.current.fontScale > 1.15f) {
        // The words do not stand beside the steps any more.
        Column(modifier.fillMaxWidth(), verticalArrangement = Arrangement.spacedBy(Gap)) {
            Row(horizontalArrangement = Arrangement.spacedBy(Gap)) {
                Step(-1, given, Modifier.weight(1f), onGive)
                Step(1, given, Modifier.weight(1f), onGive)
            }
            SecondaryButton(below, Modifier.fillMaxWidth()) { onGive(Glass.BelowView) }
            SecondaryButton(above, Modifier.fillMaxWidth()) { onGive(Glass.AboveView) }
        }
        return
    }
    Row(modifier.fillMaxWidth().height(IntrinsicSize.Min), Arrangement.spacedBy(Gap)) {
        SecondaryButton(below, Modifier.weight(1f).fillMaxHeight(), side = 6.dp) { onGive(Glass.BelowView) }
        Step(-1, given, Modifier.fillMaxHeight(), onGive)
        Step(1, given, Modifier.fillMaxHeight(), onGive)
        SecondaryButton(above, Modifier.weight(1f).fillMaxHeight(), side = 6.dp) { onGive(Glass.AboveView) }
    }
}

@Composable
private fun Step(by: Int, given: Glass?, modifier: Modifier, onGive: (Glass) -> Unit) {
    val tokens = LocalTokens.current
    val press = rememberPress()
    val now by rememberUpdatedState(given)
    val give by rememberUpdatedState(onGive)
    var held by remember { mutableStateOf(false) }
    LaunchedEffect(press.pressed) {
        if (!press.pressed) return@LaunchedEffect
        held = false
        delay(HELD_AFTER_MS)
        while (true) {
            held = true
            give(moved(now, by * 5))
            delay(HELD_EVERY_MS)
        }
    }
    val look = if (press.pressed) Ground(tokens.ink, tokens.ink, tokens.sheet) else Ground(tokens.sheet, tokens.ink, tokens.ink)
    val says = stringResource(if (by < 0) R.string.glass_step_down else R.string.glass_step_up)
    Box(
        modifier.widthIn(min = Target).heightIn(min = Target)
            .ground(look, RoundedCornerShape(Corner), press, tokens)
            .pressed(press) { if (!held) give(moved(now, by)) }
            .semantics { contentDescription = says },
        contentAlignment = Alignment.Center,
    ) {
        Text(if (by < 0) "\u2013" else "+", style = LocalType.current.figure, color = look.words)
    }
}

private const val HELD_AFTER_MS = 600L
private const val HELD_EVERY_MS = 400L
