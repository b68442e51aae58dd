package app.sumpbook.ui.control

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.Shape
import androidx.compose.ui.semantics.disabled
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.semantics.stateDescription
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.theme.Tokens

/**
 * The one act of a screen, where the thumb is. It has the corner of an oil pan; nothing else has.
 *
 * While it may not be pressed the reason stands above it in words and is read with it. [onEarly] is what a press does
 * even then, such as turning to the lines that were not seen yet; without it a press does nothing.
 *
 * @param whyNot why it may not be pressed yet, in words; none: it may
 * @param whyAbove the reason stands above it in words; without, it is only read with it
 * @param leftThumb the corner is mirrored
 */
@Composable
fun MainButton(
    words: String,
    modifier: Modifier = Modifier,
    whyNot: String? = null,
    whyAbove: Boolean = true,
    leftThumb: Boolean = false,
    onEarly: (() -> Unit)? = null,
    onPress: () -> Unit,
) {
    val tokens = LocalTokens.current
    val type = LocalType.current
    val press = rememberPress()
    val ready = whyNot == null
    val takes = ready || onEarly != null
    val look = tokens.mainGround(ready, press.pressed)
    Column(modifier.fillMaxWidth()) {
        if (whyNot != null && whyAbove) {
            Text(whyNot, Modifier.padding(bottom = 8.dp), style = type.strong, color = tokens.ink)
        }
        Box(
            Modifier.fillMaxWidth().heightIn(min = 64.dp)
                .ground(look, panCorner(leftThumb), press, tokens)
                .pressed(press, enabled = takes) { if (ready) onPress() else onEarly?.invoke() }
                .semantics {
                    if (whyNot != null) stateDescription = whyNot
                    if (!takes) disabled()
                }
                .padding(horizontal = 20.dp, vertical = 12.dp),
            contentAlignment = Alignment.Center,
        ) {
            Text(words, style = type.heading, color = look.words, textAlign = TextAlign.Center)
        }
    }
}

/** Corners 4, and 20 low on the side away from the thumb. */
internal fun panCorner(leftThumb: Boolean): Shape =
    if (leftThumb) RoundedCornerShape(Corner, Corner, 20.dp, Corner) else RoundedCornerShape(Corner, Corner, Corner, 20.dp)

private fun Tokens.mainGround(ready: Boolean, pressed: Boolean): Ground = when {
    !ready -> Ground(sheet, rule, soft, dashed = true)
    pressed -> Ground(onAct, act, act)
    else -> Ground(act, act, onAct)
}
