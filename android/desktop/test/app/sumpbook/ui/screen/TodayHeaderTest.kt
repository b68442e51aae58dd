package app.sumpbook.ui.screen

import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.test.ExperimentalTestApi
import app.sumpbook.ui.control.assertText
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.onScreen
import app.sumpbook.ui.words.Moments
import app.sumpbook.ui.words.OwnWay
import java.time.Instant
import java.time.LocalDate
import java.time.ZoneOffset
import kotlin.test.Test
import kotlin.test.assertEquals

/** The day beside a name is wide on some days and narrow on others: no day of the year breaks the name. */
@OptIn(ExperimentalTestApi::class)
class TodayHeaderTest {
    @Test
    fun `no day of the year breaks a name on a narrow phone in the largest text`() {
        for (language in listOf("en", "es")) everyDay(language)
    }

    private fun everyDay(language: String) = onScreen(320, 616, 2f) {
        val moments = Moments(ZoneOffset.UTC, Instant.parse("2026-06-30T12:00:00Z"), language)
        var day by mutableStateOf("")
        setContent { DesktopFace(OwnWay(language)) { TodayHeader("Amos Tillery", day) {} } }
        val wrong = ArrayList<String>()
        // Weekday and month decide how wide it is, and whether the day has two digits.
        for (ahead in 0L until 365) {
            runOnIdle { day = moments.day(LocalDate.of(2026, 1, 1).plusDays(ahead).toString()) }
            waitForIdle()
            runCatching { assertText("$language, $day") }.onFailure { wrong += it.message.orEmpty() }
        }
        assertEquals("", wrong.joinToString("\n"))
    }
}
