package app.sumpbook.ui

import app.sumpbook.core.Meter
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.screen.lastReportView
import app.sumpbook.ui.screen.todayView
import app.sumpbook.ui.screen.unitView
import app.sumpbook.ui.words.OwnWay
import kotlin.test.Test
import kotlin.test.assertTrue
import org.junit.Assume.assumeTrue

/** What one screen costs in Kotlin: its call of the core, and the same with all its words. Held to on the library as it is given out. */
class CallTimesTest {
    @Test
    fun `a screen's call takes at most a millisecond`() {
        val release = "/release/" in System.getProperty("sumpbook.library")
        assumeTrue("the library is not the one that is given out: set TIMES to see its figures all the same", release || System.getenv("TIMES") != null)
        uniffiEnsureInitialized()
        DayToLookAt().use { day ->
            val phone = day.phone
            val unit = day.unit("TH-01")
            val draft = phone.beginPreTrip(unit, day.signer.person, null)
            val reader = Reader(phone, phone.fleet(), OwnWay(), System.currentTimeMillis())
            val calls: Map<String, () -> Any?> = mapOf(
                "unit" to { phone.unit(unit, day.signer.person) },
                "last report" to { phone.lastReport(unit, emptyList()) },
                "hours" to { phone.hours(unit, 28_653, Meter.COMPRESSOR) },
                "stop" to { phone.stop(draft, "1", emptyList(), 0u) },
                "glass" to { phone.glass(unit, null, true) },
                "display" to { phone.display(unit, null) },
                "where it is" to { phone.whereItIs(7u) },
                "today" to { phone.today(day.signer.person) },
            )
            val screens: Map<String, () -> Any?> = mapOf(
                "unit" to { reader.unitView(unit, day.signer.person) },
                "last report" to { reader.lastReportView(unit, emptySet()) },
                "today" to { reader.todayView(day.signer.person) },
            )
            val medians = calls.mapValues { (_, call) -> median(call) }
            println("calls, ms: ${told(medians)}")
            println("screens with their words, ms: ${told(screens.mapValues { (_, call) -> median(call) })}")
            for ((name, ms) in medians - "today") assertTrue(!release || ms <= 1.0, "$name took $ms ms")
        }
    }

    private fun told(of: Map<String, Double>) = of.entries.joinToString { (name, ms) -> "$name %.2f".format(java.util.Locale.ROOT, ms) }

    private fun median(call: () -> Any?): Double {
        repeat(100) { call() }
        return List(301) {
            val from = System.nanoTime()
            call()
            (System.nanoTime() - from) / 1e6
        }.sorted()[150]
    }
}
