package app.sumpbook.ui.desk

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
