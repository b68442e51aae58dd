package app.sumpbook.ui.desk

import androidx.compose.runtime.staticCompositionLocalOf
import kotlinx.coroutines.Deferred

/** Where sounds come from and how they are heard. Each platform has its own. */
interface Sounds {
    /** There is a microphone. */
    val microphone: Boolean

    /** A sound can be chosen from what is there already. */
    val files: Boolean

    /**
     * Records until [stop], at most so many milliseconds. Asks the person first where that is the way of the platform;
     * [begun] is called when the microphone listens. Cancelled, it lets the microphone go and gives nothing.
     */
    suspend fun record(mostMs: Int, begun: () -> Unit, stop: Deferred<Unit>): Recorded

    /** Lets the person choose one; none when he changed his mind. */
    suspend fun pick(): ByteArray?

    /** Plays one to its end; false when it cannot be played here. Cancelled, it is silent. */
    suspend fun play(sound: ByteArray): Boolean
}

/** What became of recording. */
sealed interface Recorded {
    /** Its bytes, of a kind the core keeps. */
    class Sound(val bytes: ByteArray) : Recorded

    /** The person does not let this app use the microphone. */
    data object NotAllowed : Recorded

    /** The microphone gave nothing. */
    data object NoMicrophone : Recorded
}

/** The way to sounds in use; none where there is neither microphone nor anything to choose from. */
val LocalSounds = staticCompositionLocalOf<Sounds?> { null }
