package app.sumpbook.ui.control

import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.SkikoComposeUiTest
import androidx.compose.ui.test.hasAnyAncestor
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.isHeading
import androidx.compose.ui.text.TextLayoutResult
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.sp
import app.sumpbook.R
import app.sumpbook.ui.desktop.ChromeWords
import app.sumpbook.ui.frame.MAIN
import kotlin.test.assertTrue

/** Everything that can be pressed has 56 dp each way, and 12 dp to the next. */
@OptIn(ExperimentalTestApi::class)
fun SkikoComposeUiTest.assertTargets(where: String) = with(density) {
    val nodes = onAllNodes(hasClickAction()).fetchSemanticsNodes().filter { it.layoutInfo.isPlaced }
    assertTrue(nodes.isNotEmpty(), "$where: nothing to press")
    // Rounding to whole pixels is no narrowing.
    val hair = 1.dp.toPx() / 2
    for (node in nodes) {
        val size = node.size
        assertTrue(size.width + hair >= Target.toPx() && size.height + hair >= Target.toPx(), "$where: ${named(node)} is $size")
    }
    // What is scrolled half away is no target there.
    val whole = nodes.filter { it.boundsInRoot.height + hair >= it.size.height && it.boundsInRoot.width + hair >= it.size.width }
    for ((index, one) in whole.withIndex()) {
        for (other in whole.drop(index + 1)) {
            val (a, b) = one.positionInRoot to other.positionInRoot
            val across = maxOf(b.x - (a.x + one.size.width), a.x - (b.x + other.size.width))
            val down = maxOf(b.y - (a.y + one.size.height), a.y - (b.y + other.size.height))
            assertTrue(maxOf(across, down) + hair >= Gap.toPx(), "$where: ${named(one)} and ${named(other)}")
        }
    }
}

/** Keys for a figure and the steps of the glass lie whole in the frame: nobody scrolls to a key while he types. */
@OptIn(ExperimentalTestApi::class)
fun SkikoComposeUiTest.assertKeysWhole(where: String) {
    val hair = with(density) { 1.dp.toPx() / 2 }
    val keys = onAllNodes(hasClickAction()).fetchSemanticsNodes().filter { node -> node.layoutInfo.isPlaced && wordsOf(node).any { it in KEYS } }
    for (key in keys) {
        val seen = key.boundsInRoot
        assertTrue(seen.height + hair >= key.size.height && seen.width + hair >= key.size.width, "$where: the key ${named(key)} of ${key.size} is cut")
    }
}

/** The main button is whole in the frame, whatever else there is and wherever the focus went. */
@OptIn(ExperimentalTestApi::class)
fun SkikoComposeUiTest.assertMainWhole(where: String) {
    val hair = with(density) { 1.dp.toPx() / 2 }
    val main = onAllNodes(hasClickAction() and hasAnyAncestor(hasTestTag(MAIN))).fetchSemanticsNodes().singleOrNull() ?: return
    val seen = main.boundsInRoot
    assertTrue(seen.height + hair >= main.size.height && seen.width + hair >= main.size.width, "$where: the main button ${named(main)} of ${main.size} is cut")
}

/** All text is at least 16, nothing of it is cut off, and no word is broken. */
@OptIn(ExperimentalTestApi::class)
fun SkikoComposeUiTest.assertText(where: String) {
    val nodes = onAllNodes(SemanticsMatcher.keyIsDefined(SemanticsActions.GetTextLayoutResult), useUnmergedTree = true).fetchSemanticsNodes()
    assertTrue(nodes.isNotEmpty(), "$where: no text")
    for (node in nodes) {
        val results = ArrayList<TextLayoutResult>()
        node.config[SemanticsActions.GetTextLayoutResult].action?.invoke(results)
        for (laid in results) {
            val text = laid.layoutInput.text.text
            val size = laid.layoutInput.style.fontSize
            assertTrue(size.value >= 16.sp.value, "$where: '$text' is $size")
            assertTrue(!cut(laid), "$where: '$text' is cut")
            for (line in 0 until laid.lineCount - 1) {
                val end = laid.getLineEnd(line)
                val broken = end in 1 until text.length && text[end - 1].isLetterOrDigit() && text[end].isLetterOrDigit()
                assertTrue(!broken, "$where: '$text' breaks a word after '${text.take(end)}'")
            }
        }
    }
}

/** No text lies over another: where both are seen, they share no more than a hair. */
@OptIn(ExperimentalTestApi::class)
fun SkikoComposeUiTest.assertApart(where: String) {
    val nodes = onAllNodes(SemanticsMatcher.keyIsDefined(SemanticsActions.GetTextLayoutResult), useUnmergedTree = true).fetchSemanticsNodes()
        .filter { it.layoutInfo.isPlaced && !it.boundsInRoot.isEmpty }
    val hair = with(density) { 1.dp.toPx() }
    for ((index, one) in nodes.withIndex()) {
        for (other in nodes.drop(index + 1)) {
            val both = one.boundsInRoot.intersect(other.boundsInRoot)
            assertTrue(both.width <= hair || both.height <= hair, "$where: ${named(one)} lies over ${named(other)}")
        }
    }
}

/** Whatever can be pressed says what it is to whoever does not see it, a screen begins with a heading, and the main button is read last. */
@OptIn(ExperimentalTestApi::class)
fun SkikoComposeUiTest.assertRead(where: String) {
    val pressed = onAllNodes(hasClickAction()).fetchSemanticsNodes().filter { it.layoutInfo.isPlaced }
    for (node in pressed) assertTrue(wordsOf(node).any { word -> word.any(Char::isLetterOrDigit) || word in SIGNS }, "$where: ${named(node)} says nothing")
    val placed = onAllNodes(isHeading()).fetchSemanticsNodes().filter { it.layoutInfo.isPlaced && !it.boundsInRoot.isEmpty }
    assertTrue(placed.isNotEmpty(), "$where: no heading")
    // Readers go from above to below, then along: whatever stands in the frame comes in that order.
    val all = onAllNodes(SemanticsMatcher("says something") { wordsOf(it).isNotEmpty() }).fetchSemanticsNodes()
        .filter { it.layoutInfo.isPlaced && !it.boundsInRoot.isEmpty }
    val first = all.minBy { it.boundsInRoot.top }
    assertTrue(placed.minOf { it.boundsInRoot.top } <= first.boundsInRoot.bottom, "$where: ${named(first)} is read before the heading")
    val main = onAllNodes(hasClickAction() and hasAnyAncestor(hasTestTag(MAIN))).fetchSemanticsNodes().singleOrNull() ?: return
    val beside = all.filter { it.boundsInRoot.right > main.boundsInRoot.left && it.boundsInRoot.left < main.boundsInRoot.right && it.id != main.id }
    for (one in beside) assertTrue(one.boundsInRoot.top < main.boundsInRoot.bottom, "$where: ${named(one)} is read after the main button")
    val traversed = all.filter { SemanticsProperties.TraversalIndex in it.config }
    assertTrue(traversed.isEmpty(), "$where: ${traversed.map(::named)} are read out of their order")
}

/** Keys whose sign is read as a word by itself. */
private val SIGNS = setOf("+", "\u2013", "-")

/** What keys say, in both languages. */
private val KEYS = (0..9).map { "$it" }.toSet() +
    listOf("en", "es").map(::ChromeWords).flatMap { words -> listOf(R.string.keypad_erase, R.string.glass_step_down, R.string.glass_step_up).map(words::string) }

private fun wordsOf(node: SemanticsNode): List<String> =
    node.config.getOrNull(SemanticsProperties.Text).orEmpty().map { it.text } + node.config.getOrNull(SemanticsProperties.ContentDescription).orEmpty() +
        listOfNotNull(node.config.getOrNull(SemanticsProperties.EditableText)?.text).filter { it.isNotEmpty() }

/** More than a pixel of it lies outside: rounding to whole pixels cuts nothing. */
private fun cut(laid: TextLayoutResult): Boolean {
    val wide = (0 until laid.lineCount).maxOf { laid.getLineRight(it) - laid.getLineLeft(it) }
    val tall = laid.multiParagraph.height
    return laid.multiParagraph.didExceedMaxLines || tall > laid.size.height + 1 || wide > laid.size.width + 1
}

/** By what it says; where it says nothing, by all that is known of it. */
private fun named(node: SemanticsNode): String {
    val words = node.config.getOrNull(SemanticsProperties.Text).orEmpty().map { it.text } + node.config.getOrNull(SemanticsProperties.ContentDescription).orEmpty()
    return "'${words.joinToString(" ").ifEmpty { node.config.joinToString { "${it.key.name}=${it.value}" }.take(160) }}' at ${node.boundsInRoot}"
}
