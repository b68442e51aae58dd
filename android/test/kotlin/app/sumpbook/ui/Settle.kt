package app.sumpbook.ui

import androidx.compose.ui.test.ComposeUiTest
import androidx.compose.ui.test.ExperimentalTestApi
import app.sumpbook.ui.desk.Desk

/** Waits until the core has answered and the screen shows it. */
@OptIn(ExperimentalTestApi::class)
fun ComposeUiTest.settle(desk: Desk) {
    waitUntil(timeoutMillis = 20_000) {
        waitForIdle()
        desk.underWay.value == 0
    }
    waitForIdle()
}
