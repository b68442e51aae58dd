package app.sumpbook.ui.mark

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.BoxScope
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawBehind
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.PathMeasure
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.core.StopMark
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.Tokens

/**
 * The header of a walk, framed by a line that fills as one goes round the truck: from the nose along its left side,
 * round the rear, back along its right side. It shows the order, not a map. It grows with the text in it.
 *
 * @param marks one a stop, in order
 * @param here where one stands, 0 first; none on the page that sums up
 * @param says all of it in one sentence, as a reader of the screen hears it
 */
@Composable
fun WalkLine(
    marks: List<StopMark>,
    here: Int?,
    says: String,
    modifier: Modifier = Modifier,
    content: @Composable BoxScope.() -> Unit,
) {
    val tokens = LocalTokens.current
    val measure = remember { PathMeasure() }
    Box(
        modifier.fillMaxWidth().heightIn(min = 84.dp)
            .semantics { contentDescription = says }
            .drawBehind {
                val (wide, high) = size.width / density to size.height / density
                inDp { walk(measure, round(wide, high), marks, here, tokens) }
            }
            // The mark of where one stands passes over and under the words, never through them.
            .padding(start = 40.dp, end = 26.dp, top = 17.dp, bottom = 17.dp),
        content = content,
    )
}

/** The line, W x H dp: nose, left side, rear, right side. */
internal fun round(wide: Float, high: Float): Path =
    path(
        "M10 ${high / 2}L32 ${high - IN}H${wide - 24}Q${wide - 10} ${high - IN} ${wide - 10} ${high - IN - 14}" +
            "V${IN + 14}Q${wide - 10} $IN ${wide - 24} ${IN}H32L10 ${high / 2}",
    )

/** How far in the two sides run: what stands on them has room up to the words, and none of it is cut at the top. */
private const val IN = 8f

/** The gap between two stops. */
private const val GAP = 4f

private fun DrawScope.walk(measure: PathMeasure, line: Path, marks: List<StopMark>, here: Int?, tokens: Tokens) {
    if (marks.isEmpty()) return
    measure.setPath(line, false)
    val each = measure.length / marks.size
    for ((index, mark) in marks.withIndex()) {
        val from = each * index + GAP / 2
        val arc = Path().also { measure.getSegment(from, from + each - GAP, it, true) }
        val middle = measure.getPosition(from + (each - GAP) / 2)
        if (index == here) {
            drawPath(arc, tokens.act, style = flat(8f))
            val defect = mark == StopMark.DEFECT
            val ring = if (defect) 11f else 9f
            drawCircle(tokens.paper, ring, middle)
            drawCircle(tokens.act, ring, middle, style = line(4f))
            if (defect) drawPath(diamond(middle, 7f), tokens.stop) else drawCircle(tokens.act, 3f, middle)
        } else {
            stop(arc, middle, mark, tokens)
        }
    }
}

private fun DrawScope.stop(arc: Path, middle: Offset, mark: StopMark, tokens: Tokens) {
    when (mark) {
        StopMark.TO_COME -> drawPath(arc, tokens.rule, style = flat(2.5f))
        StopMark.DONE -> drawPath(arc, tokens.ink, style = flat(7f))
        StopMark.DEFECT -> {
            drawPath(arc, tokens.ink, style = flat(7f))
            drawPath(diamond(middle, 13f), tokens.paper)
            drawPath(diamond(middle, 10f), tokens.stop)
        }
        StopMark.COULD_NOT_CHECK -> {
            drawPath(arc, tokens.ink, style = flat(7f))
            drawPath(arc, tokens.paper, style = flat(3f))
        }
        StopMark.BY_OTHER -> drawPath(arc, tokens.ink, style = line(7f, 6f, 3f))
    }
}

private fun diamond(middle: Offset, half: Float): Path {
    val (x, y) = middle
    return path("M${x - half} ${y}L$x ${y - half}L${x + half} ${y}L$x ${y + half}Z")
}

private fun flat(width: Float): Stroke = line(width)
