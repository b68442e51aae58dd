package app.sumpbook.ui

import app.sumpbook.core.PhoneClock
import app.sumpbook.ui.desk.Handset
import java.time.Instant

/** A phone in a test's hand: time goes on by itself and can be skipped, for the screens and for the core alike. */
class HandHandset : Handset {
    @Volatile
    private var skipped = 0L

    /** How often it buzzed. */
    @Volatile
    var buzzed = 0
        private set

    /** So much time goes by at once. */
    fun skip(ms: Long) {
        skipped += ms
    }

    override fun ticks(): Long = System.nanoTime() / 1_000_000 + skipped

    override fun now(): Long = System.currentTimeMillis() + skipped

    /** The same time for the core. */
    val clock = object : PhoneClock {
        override fun now(): String = Instant.ofEpochMilli(this@HandHandset.now()).toString()
    }

    override fun buzz() {
        buzzed++
    }

    override fun call(number: String) = Unit
}
