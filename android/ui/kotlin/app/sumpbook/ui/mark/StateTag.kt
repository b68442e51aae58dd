package app.sumpbook.ui.mark

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawBehind
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.unit.dp
import app.sumpbook.core.Standing
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/**
 * How a task stands, heavier the nearer its end: words alone while it is far off, then a thin outline with a comb, a
 * thick outline, a solid ground. The words carry the amount: "past due 6.1 h".
 */
@Composable
fun StateTag(standing: Standing, words: String, modifier: Modifier = Modifier) {
    val tokens = LocalTokens.current
    val type = LocalType.current
    val comb = standing == Standing.COMING_UP
    val past = standing == Standing.PAST_DUE
    val heavy = past || standing == Standing.DUE_TODAY
    if (!comb && !heavy) {
        Text(words, modifier, style = type.help, color = tokens.ink)
        return
    }
    Box(
        modifier.heightIn(min = 28.dp)
            .drawBehind {
                val (wide, high) = size.width / density to size.height / density
                inDp {
                    // Within its box by half its own width, so that no neighbour cuts it.
                    val inset = if (past) 0f else if (heavy) 1.5f else 0.75f
                    val right = wide - inset
                    val (top, bottom) = inset to high - inset
                    val nose = path("M10 ${top}H${right}V${bottom}H10L$inset ${high / 2}Z")
                    when {
                        past -> drawPath(nose, tokens.stop)
                        heavy -> drawPath(nose, tokens.ink, style = line(3f))
                        else -> {
                            drawPath(nose, tokens.ink, style = line(1.5f))
                            for (n in 1..4) {
                                val x = right - 4f * n
                                drawLine(tokens.ink, Offset(x, top), Offset(x, bottom), 1.5f)
                            }
                        }
                    }
                }
            }
            .padding(start = 18.dp, end = if (comb) 26.dp else 12.dp, top = 3.dp, bottom = 3.dp),
        contentAlignment = Alignment.CenterStart,
    ) {
        Text(
            words,
            style = if (heavy) type.helpStrong else type.help,
            color = if (past) tokens.onStop else tokens.ink,
        )
    }
}
