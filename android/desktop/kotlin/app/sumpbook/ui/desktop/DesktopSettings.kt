package app.sumpbook.ui.desktop

import app.sumpbook.ui.desk.Light
import app.sumpbook.ui.desk.Settings
import app.sumpbook.ui.desk.Settled
import app.sumpbook.ui.words.OwnWay
import java.io.File
import java.nio.file.Files
import java.nio.file.StandardCopyOption
import java.util.Properties
import kotlinx.coroutines.flow.MutableStateFlow
import kotlinx.coroutines.flow.StateFlow

/**
 * Keeps how the window is set, in a file beside the book. What does not read there is as if nothing had been set.
 *
 * @param language what is spoken while nothing is chosen: the machine's own
 */
class DesktopSettings(private val file: File, private val language: String) : Settings {
    private val settled = MutableStateFlow(read())

    override val now: StateFlow<Settled> get() = settled

    override fun settle(to: Settled) {
        settled.value = to
        val kept = Properties().apply {
            setProperty("language", to.way.language)
            setProperty("metric", to.way.metric.toString())
            setProperty("left-thumb", to.way.leftThumb.toString())
            setProperty("text", to.text.toString())
            setProperty("high", to.high.toString())
            setProperty("light", to.light.name)
            setProperty("buzz", to.buzz.toString())
            setProperty("shop-number", to.shopNumber)
        }
        // Written whole beside it first: a full disk leaves what was set before.
        runCatching {
            file.absoluteFile.parentFile.mkdirs()
            val next = File(file.absolutePath + ".new")
            next.outputStream().use { kept.store(it, null) }
            Files.move(next.toPath(), file.toPath(), StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE)
        }
    }

    private fun read(): Settled {
        val kept = Properties()
        runCatching { file.inputStream().use(kept::load) }
        fun yes(name: String, other: Boolean) = kept.getProperty(name)?.toBooleanStrictOrNull() ?: other
        return Settled(
            OwnWay(kept.getProperty("language") ?: language, yes("metric", false), yes("left-thumb", false)),
            kept.getProperty("text")?.toFloatOrNull()?.coerceIn(1f, 2f) ?: 1f,
            yes("high", false),
            Light.entries.firstOrNull { it.name == kept.getProperty("light") } ?: Light.AUTO,
            yes("buzz", true),
            kept.getProperty("shop-number").orEmpty(),
        )
    }
}
