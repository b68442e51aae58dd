package app.sumpbook.ui.mark

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.theme.LocalTokens

/** How far one is in steps that have an order: done solid, here a ring, to come an outline. The words stand beside it. */
@Composable
fun StepLine(of: Int, here: Int, modifier: Modifier = Modifier) {
    val tokens = LocalTokens.current
    Canvas(modifier.fillMaxWidth().height(24.dp).clearAndSetSemantics {}) {
        val wide = size.width / density
        inDp {
            val each = if (of > 1) (wide - 20f) / (of - 1) else 0f
            val at = { n: Int -> Offset(10f + each * n, 12f) }
            drawLine(tokens.rule, at(0), at(of - 1), 2.5f)
            drawLine(tokens.ink, at(0), at(here.coerceIn(0, of - 1)), 4f)
            for (n in 0 until of) {
                when {
                    n < here -> drawCircle(tokens.ink, 6f, at(n))
                    n == here -> {
                        drawCircle(tokens.paper, 9f, at(n))
                        drawCircle(tokens.act, 9f, at(n), style = line(4f))
                        drawCircle(tokens.act, 3f, at(n))
                    }
                    else -> {
                        drawCircle(tokens.sheet, 5f, at(n))
                        drawCircle(tokens.rule, 5f, at(n), style = line(2.5f))
                    }
                }
            }
        }
    }
}
