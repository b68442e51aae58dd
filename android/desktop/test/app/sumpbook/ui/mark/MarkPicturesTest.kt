package app.sumpbook.ui.mark

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.padding
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.unit.dp
import app.sumpbook.core.LockState
import app.sumpbook.core.Standing
import app.sumpbook.core.StopMark
import app.sumpbook.ui.control.TwoClockRuler
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.onScreen
import app.sumpbook.ui.picture
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.words.OwnWay
import kotlin.test.Test

/** Every state of every mark on one page in each theme, to be looked at; MarksInGreyTest holds what can be measured. */
@OptIn(ExperimentalTestApi::class)
class MarkPicturesTest {
    @Test
    fun `all marks in all four themes`() {
        for (theme in Theme.ALL) {
            onScreen(390, 760) {
                setContent { DesktopFace(OwnWay(), theme.dark, theme.high) { Page() } }
                picture("marks-${if (theme.high) "high-" else ""}${if (theme.dark) "dark" else "light"}")
            }
        }
    }

    @Composable
    private fun Page() = Column(
        Modifier.fillMaxSize().background(LocalTokens.current.paper).padding(12.dp), Arrangement.spacedBy(8.dp),
    ) {
        for (old in listOf(false, true)) {
            for (road in LockState.entries) {
                Row(horizontalArrangement = Arrangement.spacedBy(8.dp)) {
                    for (air in LockState.entries) PairMark(PairLook(road, air, old = old))
                }
            }
        }
        Row(horizontalArrangement = Arrangement.spacedBy(8.dp)) {
            PairMark(PairLook(LockState.NO_LOCK_ON_RECORD, LockState.NO_LOCK_ON_RECORD, outlet = true))
            for (where in Where.entries) WhereMark(where)
            AppMark(side = 56.dp)
        }
        val marks = StopMark.entries + List(10) { StopMark.TO_COME }
        WalkLine(marks, 6, "") {}
        StepLine(6, 2)
        for (standing in listOf(Standing.FAR_OFF, Standing.COMING_UP, Standing.DUE_TODAY, Standing.PAST_DUE)) StateTag(standing, "6.1 h")
        TwoClockRuler(Clock(934, true, comingFrom = 900), Clock(700, false), RunsOut(560, 640, 800), null, null, "")
        TwoClockRuler(Clock(500, false, least = 400), Clock(1_400, true), null, null, null, "")
    }
}
