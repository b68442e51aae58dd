package app.sumpbook.ui.desk

import androidx.compose.runtime.staticCompositionLocalOf
import java.time.Instant

/** What only the machine in the hand can do. Each platform has its own; tests drive one by hand. */
interface Handset {
    /** Milliseconds on a clock that only runs forward and counts through sleep. Its zero says nothing. */
    fun ticks(): Long

    /** The moment now, milliseconds since 1970: only to tell how far off another moment is. */
    fun now(): Long

    /** Two buzzes: a timer ran out. Nothing depends on it; the ring blinks as well. */
    fun buzz()

    /** Opens the dialler with a number. */
    fun call(number: String)
}

/** The moment now as the core writes moments. */
fun Handset.stamp(): String = Instant.ofEpochMilli(now()).toString()

/** How often the app was brought to the front: what may have changed meanwhile is looked at again. */
val LocalCameBack = staticCompositionLocalOf { 0 }
