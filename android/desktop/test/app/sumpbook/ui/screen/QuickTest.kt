package app.sumpbook.ui.screen

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.onNodeWithText
import app.sumpbook.core.ItemFigure
import app.sumpbook.core.How
import app.sumpbook.core.Figure
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Answer
import app.sumpbook.ui.App
import app.sumpbook.ui.HandHandset
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.onPhone
import app.sumpbook.ui.control.assertKeysWhole
import app.sumpbook.ui.onScreen
import app.sumpbook.ui.picture
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.settle
import kotlin.test.AfterTest
import kotlin.test.Test

/** A quick walk is told before the name stands under it, and is signed as it is. */
@OptIn(ExperimentalTestApi::class)
class QuickTest {
    private val cab = Cab()

    @AfterTest
    fun clear() = cab.close()

    private fun signed(afterMs: Long, says: String?) = with(cab) {
        val draft = answeredWalk("TH-01")
        onScreen(high = 776) {
            val hand = HandHandset()
            val desk = Desk(phone, hand)
            desk.walks.begins(draft)
            hand.skip(afterMs)
            setContent { DesktopFace { App(desk, BackStack(Place.Sign(unit("TH-01"), draft), Signer(person()))) } }
            settle(desk)
            picture(if (says == null) "sign-not-quick" else "sign-quick")
            if (says == null) onNodeWithText("look again?", substring = true).assertDoesNotExist() else onNodeWithText(says).assertExists()
            // Each figure by its name: a bare 48 psi says nothing to whoever signs for it.
            for (named in listOf("Compressor hours: 2,862.4", "Sight glass: 48\u00A0%", "Leak, brakes released: 48\u00A0psi", "Leak, pedal held: 48\u00A0psi")) {
                onNodeWithText(named, substring = true).assertExists()
            }
            onNodeWithText("Sign without PIN").assertExists()
            assertKeysWhole("the PIN, with the time of the walk above it")
        }
    }

    @Test
    fun `done in little more than a minute`() = signed(65_000, "done in 1:05, look again?")

    @Test
    fun `a brake test read early is the reason, however long the walk took`() = with(cab) {
        val draft = answeredWalk("TH-01")
        val line = stopLine(draft, "leak-released", "air-leak-released")
        phone.answerLine(draft, Answer(item = line, answer = AnswerKind.OK, figures = listOf(ItemFigure(Figure(1, 0u, "psi"), How.CHOSEN)), onScreenMs = 20_000u))
        onPhone {
            val hand = HandHandset()
            val desk = Desk(phone, hand)
            desk.walks.begins(draft)
            hand.skip(900_000)
            setContent { DesktopFace { App(desk, BackStack(Place.Sign(unit("TH-01"), draft), Signer(person()))) } }
            settle(desk)
            picture("sign-quick-test")
            onNodeWithText("A brake test was read sooner than 60 s after its start. Look again?").assertExists()
            onNodeWithText("done in 15:00").assertExists()
        }
    }

    private fun stopLine(draft: String, stop: String, item: String): String =
        checkNotNull(cab.phone.stop(draft, cab.stop(draft, stop), emptyList(), 0u)).lines.first { it.item == item }.item

    @Test
    fun `done in seven minutes`() = signed(430_000, null)
}
