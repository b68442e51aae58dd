package app.sumpbook.ui.desk

import androidx.compose.runtime.staticCompositionLocalOf

/** Holds the phone at one page while somebody else has it in his hand. Each platform has its own. */
interface Held {
    /** Asks the system to hold it; the person may have to say yes to the system, or the system says no. */
    fun hold()

    /** It is held now. */
    fun isHeld(): Boolean

    /** Lets go of it. */
    fun letGo()
}

/** The way to hold the phone at a page; none where there is none. */
val LocalHeld = staticCompositionLocalOf<Held?> { null }
