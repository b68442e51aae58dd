package app.sumpbook.ui.desk

import androidx.compose.runtime.staticCompositionLocalOf
import kotlinx.coroutines.flow.StateFlow

/** Files that leave the app and files that come to it. Each platform has its own way. */
interface Files {
    /** Gives a file to whoever the person chooses: another app, a card, somebody near. False when there is no way. */
    suspend fun give(name: String, bytes: ByteArray): Boolean

    /** Lets the person choose a file to take in: its bytes; none when he changed his mind. */
    suspend fun choose(): ByteArray?

    /** A file that another app gave this one, until [taken] is called. */
    val given: StateFlow<ByteArray?>

    /** The given file was taken in. */
    fun taken()
}

/** The way to files in use; none where there is none. */
val LocalFiles = staticCompositionLocalOf<Files?> { null }

/** The most bytes a file may have that is taken in: years of a fleet are far less. */
const val MOST_FILE_BYTES = 64 * 1024 * 1024
