package app.sumpbook.ui.screen

import app.sumpbook.ui.desk.Recorded
import app.sumpbook.ui.desk.Sounds
import java.io.ByteArrayInputStream
import java.io.ByteArrayOutputStream
import javax.sound.sampled.AudioFileFormat
import javax.sound.sampled.AudioFormat
import javax.sound.sampled.AudioInputStream
import javax.sound.sampled.AudioSystem
import kotlin.math.PI
import kotlin.math.sin
import kotlinx.coroutines.CompletableDeferred
import kotlinx.coroutines.Deferred

/** A microphone held up to what whines: it hears what it is given, until it is stopped. */
class HeldUp(var hears: Recorded = Recorded.Sound(whine(2)), override val microphone: Boolean = true, override val files: Boolean = true) : Sounds {
    /** What was played. */
    val played = ArrayList<ByteArray>()

    /** What is chosen next. */
    var chosen: ByteArray? = null

    /** Ends what is played. */
    var playing = CompletableDeferred<Unit>()

    override suspend fun record(mostMs: Int, begun: () -> Unit, stop: Deferred<Unit>): Recorded {
        if (hears == Recorded.NotAllowed) return hears
        begun()
        stop.await()
        return hears
    }

    override suspend fun pick(): ByteArray? = chosen

    override suspend fun play(sound: ByteArray): Boolean {
        played += sound
        playing.await()
        return true
    }
}

/** So many seconds of a whine: one channel of 16 bits at 8 kHz. */
fun whine(seconds: Int, channels: Int = 1): ByteArray {
    val rate = 8_000
    val samples = ByteArray(rate * seconds * 2 * channels)
    for (n in 0 until rate * seconds * channels) {
        val value = (sin(2 * PI * 700 * n / rate) * 9_000).toInt()
        samples[2 * n] = value.toByte()
        samples[2 * n + 1] = (value shr 8).toByte()
    }
    val form = AudioFormat(rate.toFloat(), 16, channels, true, false)
    val stream = AudioInputStream(ByteArrayInputStream(samples), form, (rate * seconds).toLong())
    return ByteArrayOutputStream().also { AudioSystem.write(stream, AudioFileFormat.Type.WAVE, it) }.toByteArray()
}
