package app.sumpbook.ui

import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SemanticsNodeInteraction
import androidx.compose.ui.test.ComposeUiTest
import androidx.compose.ui.test.hasAnyAncestor
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasContentDescription
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.hasSetTextAction
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.isEnabled
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollTo
import androidx.compose.ui.test.performTextInput
import androidx.compose.ui.test.performTouchInput
import androidx.compose.ui.geometry.Offset
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.frame.MAIN

/** A driver at a phone: does what a thumb does, and counts it. */
@OptIn(ExperimentalTestApi::class)
class Driver(private val screen: ComposeUiTest, private val desk: Desk?, private val hand: HandHandset) {
    var taps = 0
    var digits = 0
    var drags = 0
    var turns = 0

    /** The core has answered, the screen shows it, and it has stood for a second: no bounce. */
    fun settle() {
        quiet()
        hand.skip(1_000)
        screen.mainClock.advanceTimeBy(1_000)
        quiet()
    }

    private fun quiet() {
        if (desk == null) screen.waitForIdle() else screen.settle(desk)
    }

    /** Something that begins so is on the screen. */
    fun sees(part: String): Boolean = screen.onAllNodes(hasText(part, substring = true)).fetchSemanticsNodes().isNotEmpty()

    /** Waits for words, in real time: somebody else is at work. */
    fun waitFor(part: String) {
        val until = System.nanoTime() + 60_000_000_000
        while (!sees(part)) {
            check(System.nanoTime() < until) { "never seen: $part" }
            Thread.sleep(50)
            screen.mainClock.advanceTimeBy(500)
            screen.waitForIdle()
        }
    }

    /** Words in a field. */
    fun write(field: String, words: String) {
        screen.onNode(hasContentDescription(field) and hasSetTextAction()).performScrollTo().performTextInput(words)
        settle()
    }

    /** The key as this phone's screen shows it: groups of two signs. */
    fun keyShown(): String = words().first { Regex("""([0-9A-F]{2} ){5,}.*""").matches(it) }

    /** What is told in strips and lines. */
    fun strips(): String = words().joinToString(" ")

    /** How far round the walk is. */
    fun header(): String = words().first { Regex("""\d+b? / \d+""").matches(it) }

    private fun words(): List<String> = screen.onAllNodes(hasText("", substring = true)).fetchSemanticsNodes()
        .flatMap { it.config.getOrNull(SemanticsProperties.Text).orEmpty() }.map { it.text }

    /** The tap after which nobody waits. */
    fun mainWithoutWaiting() {
        screen.onNode(hasClickAction() and hasAnyAncestor(hasTestTag(MAIN))).performClick()
    }

    /** What the main button says. */
    fun mainWords(): String = texts(screen.onNode(hasClickAction() and hasAnyAncestor(hasTestTag(MAIN)), useUnmergedTree = false)).joinToString(" ")

    /** One tap on the main button. */
    fun main() {
        screen.onNode(hasClickAction() and hasAnyAncestor(hasTestTag(MAIN)) and isEnabled()).performClick()
        taps++
        settle()
    }

    /** One tap on what says this. */
    fun tap(words: String) {
        // What is fixed needs no scrolling, and cannot be scrolled to.
        val node = screen.onAllNodes(hasText(words, substring = false) and hasClickAction()).onFirst()
        runCatching { node.performScrollTo() }
        node.performClick()
        taps++
        settle()
    }

    /** One tap on what begins with this, wherever it is scrolled to. */
    fun tapOn(part: String) {
        screen.onAllNodes(hasText(part, substring = true) and hasClickAction()).onFirst().performScrollTo().performClick()
        taps++
        settle()
    }

    /** Digits on the keypad. */
    fun type(figure: String) {
        for (digit in figure) {
            screen.onAllNodes(hasText(digit.toString()) and hasClickAction()).onFirst().performScrollTo().performClick()
            digits++
            quiet()
        }
        settle()
    }

    /** The last digit taken back. */
    fun erase() {
        screen.onNode(hasContentDescription("Erase the last digit")).performScrollTo().performClick()
        quiet()
    }

    /** Turns pages until nothing is below any more. */
    fun lookAtAll(more: Regex) {
        while (more.containsMatchIn(mainWords())) {
            screen.onNode(hasClickAction() and hasAnyAncestor(hasTestTag(MAIN))).performClick()
            turns++
            settle()
        }
    }

    /** One drag on the sight glass to a level. */
    fun drag(percent: Int) {
        // The glass stands there as soon as the core has answered.
        screen.waitUntil(timeoutMillis = 30_000) { screen.onAllNodes(hasContentDescription("Sight glass")).fetchSemanticsNodes().isNotEmpty() }
        screen.onNode(hasContentDescription("Sight glass")).performScrollTo().performTouchInput {
            // The drawing is 328 x 240; its scale is the width's.
            val scale = height / 240f
            down(Offset(width * 0.4f, 120f * scale))
            moveTo(Offset(width * 0.4f, (208f - 1.76f * percent) * scale))
            up()
        }
        drags++
        settle()
    }

    /** The sixty seconds of a leak test go by. */
    fun skipMinute() {
        hand.skip(61_000)
        settle()
    }

    /** The glass waits for its level. */
    fun wantsGlass(): Boolean = screen.onAllNodes(hasContentDescription("Sight glass")).fetchSemanticsNodes().isNotEmpty()

    /** The meter waits for its figure. */
    fun wantsHours(): Boolean = screen.onAllNodes(hasContentDescription("Erase the last digit")).fetchSemanticsNodes().isNotEmpty()

    private fun texts(node: SemanticsNodeInteraction): List<String> =
        node.fetchSemanticsNode().config.getOrNull(SemanticsProperties.Text).orEmpty().map { it.text }
}
