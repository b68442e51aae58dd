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
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawBehind
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.input.key.KeyEventType
import androidx.compose.ui.input.key.key
import androidx.compose.ui.input.key.onKeyEvent
import androidx.compose.ui.input.key.type
import androidx.compose.ui.input.key.utf16CodePoint
import androidx.compose.ui.input.key.Key
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/**
 * The app's own keys for figures: never the system's, whose layout nobody knows beforehand. There is no point: figures
 * fill from the right, so a slipped one cannot be typed. Keys of a real keyboard are taken as well.
 *
 * @param tall height of a key; 72 where a PIN is chosen
 */
@Composable
fun Keypad(onDigit: (Int) -> Unit, onErase: () -> Unit, modifier: Modifier = Modifier, tall: Dp = Target) {
    Column(
        modifier.fillMaxWidth().onKeyEvent { event ->
            val digit = event.utf16CodePoint.toChar().digitToIntOrNull()
            when {
                event.type != KeyEventType.KeyDown -> false
                event.key == Key.Backspace -> true.also { onErase() }
                digit != null -> true.also { onDigit(digit) }
                else -> false
            }
        },
        verticalArrangement = Arrangement.spacedBy(Gap),
    ) {
        for (row in listOf(listOf(1, 2, 3), listOf(4, 5, 6), listOf(7, 8, 9))) {
            Row(Modifier.height(IntrinsicSize.Min), Arrangement.spacedBy(Gap)) {
                for (digit in row) DigitKey(digit, Modifier.weight(1f), tall) { onDigit(digit) }
            }
        }
        Row(Modifier.height(IntrinsicSize.Min), Arrangement.spacedBy(Gap)) {
            EraseKey(Modifier.weight(1f), tall, onErase)
            DigitKey(0, Modifier.weight(1f), tall) { onDigit(0) }
            Box(Modifier.weight(1f))
        }
    }
}

@Composable
private fun DigitKey(digit: Int, modifier: Modifier, tall: Dp, onPress: () -> Unit) =
    KeyGround(modifier, tall, onPress) { Text(digit.toString(), style = LocalType.current.figure, color = it.words) }

@Composable
private fun EraseKey(modifier: Modifier, tall: Dp, onPress: () -> Unit) {
    val erase = stringResource(R.string.keypad_erase)
    KeyGround(modifier.semantics { contentDescription = erase }, tall, onPress) { look ->
        Box(
            Modifier.widthIn(min = 28.dp).heightIn(min = 24.dp).drawBehind {
                val (x, y) = Offset(2.dp.toPx(), size.height / 2)
                val arrow = Path().apply {
                    moveTo(x + 10.dp.toPx(), y - 10.dp.toPx())
                    lineTo(x, y)
                    lineTo(x + 10.dp.toPx(), y + 10.dp.toPx())
                    moveTo(x, y)
                    lineTo(size.width, y)
                }
                drawPath(arrow, look.words, style = Stroke(4.dp.toPx()))
            },
        )
    }
}

@Composable
private fun KeyGround(modifier: Modifier, tall: Dp, onPress: () -> Unit, content: @Composable (Ground) -> Unit) {
    val tokens = LocalTokens.current
    val press = rememberPress()
    val look = if (press.pressed) Ground(tokens.ink, tokens.ink, tokens.sheet) else Ground(tokens.sheet, tokens.ink, tokens.ink)
    Box(
        modifier.fillMaxHeight().heightIn(min = tall).ground(look, RoundedCornerShape(Corner), press, tokens).pressed(press, onPress = onPress),
        contentAlignment = Alignment.Center,
    ) { content(look) }
}
