package app.sumpbook.ui.desk

/** How long each walk under way has taken, on a clock that counts through sleep. Ended apps do not know: then nothing is said. */
class WalkClock(private val handset: Handset) {
    private val began = HashMap<String, Long>()

    /** A walk's first stop is opened. */
    fun begins(draft: String) {
        began.putIfAbsent(draft, handset.ticks())
    }

    /** Milliseconds since; none when this app has not seen its beginning. */
    fun walkedMs(draft: String): ULong? = began[draft]?.let { (handset.ticks() - it).coerceAtLeast(0).toULong() }
}
