package app.sumpbook.ui.desktop

import app.sumpbook.ui.desk.Recorded
import app.sumpbook.ui.desk.Sounds
import java.io.ByteArrayInputStream
import java.io.ByteArrayOutputStream
import java.io.File
import java.io.IOException
import javax.sound.sampled.AudioFileFormat
import javax.sound.sampled.AudioFormat
import javax.sound.sampled.AudioInputStream
import javax.sound.sampled.AudioSystem
import javax.sound.sampled.DataLine
import javax.sound.sampled.LineUnavailableException
import javax.sound.sampled.SourceDataLine
import javax.sound.sampled.TargetDataLine
import javax.sound.sampled.UnsupportedAudioFileException
import kotlinx.coroutines.Deferred
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.ensureActive
import kotlinx.coroutines.withContext
import kotlin.coroutines.coroutineContext

/**
 * Sounds of a desk computer: its microphone where it has one, and files.
 *
 * @param choose which file; none when the person changed his mind
 */
class DesktopSounds(private val choose: () -> File? = ::fileOfADialog) : Sounds {
    override val microphone: Boolean by lazy { AudioSystem.isLineSupported(LISTENS) }
    override val files = true

    override suspend fun record(mostMs: Int, begun: () -> Unit, stop: Deferred<Unit>): Recorded {
        val line = withContext(Dispatchers.IO) { opened() } ?: return Recorded.NoMicrophone
        return line.use {
            begun()
            val samples = withContext(Dispatchers.IO) { heard(line, bytesOf(mostMs), stop) }
            if (samples.isEmpty()) Recorded.NoMicrophone else Recorded.Sound(wav(samples))
        }
    }

    private fun opened(): TargetDataLine? = try {
        (AudioSystem.getLine(LISTENS) as TargetDataLine).apply {
            open(KEPT)
            start()
        }
    } catch (_: LineUnavailableException) {
        null
    } catch (_: IllegalArgumentException) {
        null
    }

    private suspend fun heard(line: TargetDataLine, most: Int, stop: Deferred<Unit>): ByteArray {
        val samples = ByteArrayOutputStream()
        val piece = ByteArray(bytesOf(PIECE_MS))
        while (samples.size() < most && !stop.isCompleted) {
            coroutineContext.ensureActive()
            val came = line.read(piece, 0, minOf(piece.size, most - samples.size()))
            if (came <= 0) break
            samples.write(piece, 0, came)
        }
        return samples.toByteArray()
    }

    override suspend fun pick(): ByteArray? = withContext(Dispatchers.IO) { choose()?.readBytes()?.let(::small) }

    override suspend fun play(sound: ByteArray): Boolean = withContext(Dispatchers.IO) {
        try {
            AudioSystem.getAudioInputStream(ByteArrayInputStream(sound)).use { stream ->
                val line = AudioSystem.getLine(DataLine.Info(SourceDataLine::class.java, stream.format)) as SourceDataLine
                line.use {
                    line.open(stream.format)
                    line.start()
                    val piece = ByteArray(bytesOf(PIECE_MS))
                    while (true) {
                        coroutineContext.ensureActive()
                        val came = stream.read(piece)
                        if (came <= 0) break
                        line.write(piece, 0, came)
                    }
                    line.drain()
                }
            }
            true
        } catch (_: UnsupportedAudioFileException) {
            false
        } catch (_: LineUnavailableException) {
            false
        } catch (_: IllegalArgumentException) {
            false
        } catch (_: IOException) {
            false
        }
    }
}

/** Sixteen thousand samples a second: what bearings and belts say lies below eight kilohertz. */
private val KEPT = AudioFormat(16_000f, 16, 1, true, false)
private val LISTENS = DataLine.Info(TargetDataLine::class.java, KEPT)
private const val PIECE_MS = 100

private fun bytesOf(ms: Int) = ms * 32

private fun wav(samples: ByteArray): ByteArray = written(AudioInputStream(ByteArrayInputStream(samples), KEPT, samples.size / 2L))

private fun written(stream: AudioInputStream) = ByteArrayOutputStream().also { AudioSystem.write(stream, AudioFileFormat.Type.WAVE, it) }.toByteArray()

/** A chosen file with one channel and as small as what is recorded here; what this cannot read is left for the core to judge. */
internal fun small(file: ByteArray): ByteArray = try {
    AudioSystem.getAudioInputStream(ByteArrayInputStream(file)).use { stream ->
        if (!AudioSystem.isConversionSupported(KEPT, stream.format)) return file
        val samples = AudioSystem.getAudioInputStream(KEPT, stream).use { it.readBytes() }
        // An odd byte would be half a sample.
        wav(samples.copyOf(samples.size / 2 * 2))
    }
} catch (_: UnsupportedAudioFileException) {
    file
} catch (_: IOException) {
    file
}
