package app.sumpbook.ui

import app.sumpbook.core.PhoneClock
import app.sumpbook.ui.desk.Handset
import java.time.Instant

/** A phone in a test's hand. What it measures can be skipped; the time of day is the machine's, as the shop has it. */
class HandHandset : Handset {
    @Volatile
    private var skipped = 0L

    /** How often it buzzed. */
    @Volatile
    var buzzed = 0
        private set

    /** So much goes by at once on the clock that measures. */
    fun skip(ms: Long) {
        skipped += ms
    }

    @Volatile
    private var slept = 0L

    /** So much goes by on the clock of the day as well: nobody touched the phone meanwhile. */
    fun sleep(ms: Long) {
        skip(ms)
        slept += ms
    }

    override fun ticks(): Long = System.nanoTime() / 1_000_000 + skipped

    override fun now(): Long = System.currentTimeMillis() + slept

    /** The same time of day for the core. */
    val clock = object : PhoneClock {
        override fun now(): String = Instant.ofEpochMilli(this@HandHandset.now()).toString()
    }

    override fun buzz() {
        buzzed++
    }

    override fun call(number: String) = Unit
}
