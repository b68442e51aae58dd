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

/** What one screen costs in Kotlin: its call of the core, and the same with all its words. Held to a millisecond on the library as it is given out. */
class CallTimesTest {
    @Test
    fun `a screen's call takes at most a millisecond`() {
        // The library that tests run on is not made fast: it is held to so much more that only something gone wrong reaches it.
        val most = if (release) 1.0 else 150.0
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
            for ((name, ms) in medians) assertTrue(ms <= most, "$name took $ms ms")
        }
    }

    private fun told(of: Map<String, Double>) = of.entries.joinToString { (name, ms) -> "$name %.2f".format(java.util.Locale.ROOT, ms) }

    private fun median(call: () -> Any?): Double {
        // Until the machine has compiled what it is going to; then what thousands of calls left to be freed is freed, which
        // between two screens is nothing.
        repeat(if (release) times * 3 else times / 3) { call() }
        System.gc()
        if (release) Thread.sleep(3_000)
        return List(times) {
            val from = System.nanoTime()
            call()
            (System.nanoTime() - from) / 1e6
        }.sorted()[times / 2]
    }

    private val release = "/release/" in System.getProperty("sumpbook.library")
    private val times = if (release) 301 else 31
}
