package app.sumpbook.ui.mark

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.padding
import androidx.compose.ui.Modifier
import androidx.compose.ui.unit.dp
import app.sumpbook.core.Glass
import app.sumpbook.core.LockState
import app.sumpbook.core.Standing
import app.sumpbook.core.StopMark
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.CheckLine
import app.sumpbook.ui.control.HoldRing
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.MainButton
import app.sumpbook.ui.control.SightGlass
import app.sumpbook.ui.control.TwoClockRuler
import kotlin.test.Test

/** Every state of every mark is told apart in a grey picture, in all four themes. */
class MarksInGreyTest {
    @Test
    fun `each half of the pair mark, new and old news`() {
        val all = listOf(false, true).flatMap { old ->
            LockState.entries.flatMap { road -> LockState.entries.map { air -> PairLook(road, air, old = old) } }
        }
        val outlet = PairLook(LockState.NO_LOCK_ON_RECORD, LockState.NO_LOCK_ON_RECORD, outlet = true)
        assertToldApart(112, 40, (all + outlet).associateBy { it.toString() }) { PairMark(it) }
    }

    @Test
    fun `a lock changes the silhouette`() {
        // Outside the body there is nothing but a bolt: 14 dp at either side.
        assertToldApart(14, 40, LockState.entries.associateBy { it.name }, share = 0.06f) {
            PairMark(PairLook(it, LockState.NO_LOCK_ON_RECORD))
        }
    }

    @Test
    fun `each mark of a stop on the line round the truck, and where one is`() {
        val states = StopMark.entries.associate { it.name to (it to null as Int?) } + ("here" to (StopMark.TO_COME to 0 as Int?)) +
            ("here, a defect" to (StopMark.DEFECT to 0 as Int?))
        assertToldApart(328, 84, states, share = 0.004f) { (mark, here) ->
            WalkLine(listOf(mark) + List(5) { StopMark.TO_COME }, here, "") {}
        }
    }

    @Test
    fun `each tag of a task, with the same words in it`() {
        val states = listOf(Standing.FAR_OFF, Standing.COMING_UP, Standing.DUE_TODAY, Standing.PAST_DUE)
        assertToldApart(140, 28, states.associateBy { it.name }) { StateTag(it, "6.1 h") }
    }

    @Test
    fun `each place where an entry stands`() = assertToldApart(20, 24, Where.entries.associateBy { it.name }, share = 0.1f) { WhereMark(it) }

    @Test
    fun `how far one is in steps`() = assertToldApart(328, 24, (0..3).associateBy { "$it" }) { StepLine(4, it) }

    @Test
    fun `each state of the glass`() {
        val states = mapOf(
            "not given" to (null to true), "38" to (Glass.Percent(38u) to true), "50" to (Glass.Percent(50u) to true),
            "0" to (Glass.Percent(0u) to true), "100" to (Glass.Percent(100u) to true), "below" to (Glass.BelowView to true),
            "above" to (Glass.AboveView to true), "read only" to (Glass.Percent(38u) to false),
        )
        assertToldApart(328, 240, states, share = 0.01f) { (level, worked) ->
            SightGlass(level, 45..55, onGive = if (worked) { _ -> } else null)
        }
    }

    @Test
    fun `each state of the ruler`() {
        val states = mapOf(
            "half" to Clock(500, true), "coming up" to Clock(930, true, comingFrom = 900), "at the post" to Clock(1_000, true),
            "past" to Clock(1_050, true), "past and cut" to Clock(1_900, true), "estimated" to Clock(800, true, least = 500),
            "counted to 800" to Clock(800, true), "not the nearer" to Clock(500, false),
        )
        assertToldApart(328, 62, states, share = 0.004f) { TwoClockRuler(it, null, null, null, null, "") }
        val ends = mapOf("none" to null, "a span" to RunsOut(500, 600, 800), "without an end" to RunsOut(500, 600, null))
        assertToldApart(328, 80, ends, share = 0.004f) { TwoClockRuler(Clock(300, true), Clock(300, false), it, null, null, "") }
    }

    @Test
    fun `what is chosen, ticked, not enabled, a defect, run out`() {
        assertToldApart(120, 56, mapOf("chosen" to true, "not" to false)) { Chip("loose", it) {} }
        assertToldApart(200, 56, mapOf("seen" to true, "not" to false)) { CheckLine("Gauge", it) {} }
        assertToldApart(200, 64, mapOf("ready" to true, "not" to false)) { ready ->
            // The words of the reason stand above: here only the button itself is compared.
            Box(Modifier.padding(0.dp)) { MainButton("Go", whyNot = if (ready) null else "") {} }
        }
        assertToldApart(200, 56, mapOf("defect" to true, "none" to false)) { Line("Mirrors", defect = it) {} }
        assertToldApart(160, 160, mapOf("41 s" to 41_000L, "10 s" to 10_000L, "run out" to 0L)) { HoldRing(it, 60_000, "") }
    }
}
