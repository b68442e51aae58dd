package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.runtime.setValue
import app.sumpbook.core.SoundAct
import app.sumpbook.core.SoundNow
import app.sumpbook.core.SoundQuery
import app.sumpbook.core.SoundTrouble
import app.sumpbook.core.soundPart
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.SecondaryRow
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.LocalSounds
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.theme.LocalType
import kotlinx.coroutines.Job
import kotlinx.coroutines.launch

/** A sound of a defect that was told: heard where this phone holds it, and that there is one where it does not. */
@Composable
fun SoundHeard(sound: String) {
    val sounds = LocalSounds.current
    val scope = rememberCoroutineScope()
    var plays by remember { mutableStateOf<Job?>(null) }
    var trouble by remember { mutableStateOf<SoundTrouble?>(null) }
    val listening = plays != null
    val shown by seen(sound, listening, trouble) {
        val part = soundPart(SoundQuery(true, if (listening) SoundNow.Listening else SoundNow.Still, false, false, trouble))
        // What is signed is not taken away.
        val button = part.buttons.firstOrNull { it.act != SoundAct.TAKE_AWAY }?.let { words(it.key) }
        HeardWords(words("sound-of-defect"), words("sound-not-here"), button, trouble?.let { words(part.lines.first().key) }, phone.sound(sound))
    }
    val words = (shown as? Told.Got)?.it ?: return
    val bytes = words.bytes
    if (bytes == null || sounds == null) {
        Text(if (bytes == null) words.notHere else words.title, style = LocalType.current.help)
        return
    }
    Text(words.title, style = LocalType.current.help)
    words.trouble?.let { Strip(it, heavy = true) }
    words.button?.let { label ->
        SecondaryRow {
            SecondaryButton(label) {
                trouble = null
                val under = plays
                if (under != null) under.cancel()
                else plays = scope.launch {
                    try {
                        if (!sounds.play(bytes)) trouble = SoundTrouble.NOT_PLAYED
                    } finally {
                        plays = null
                    }
                }
            }
        }
    }
}

private class HeardWords(val title: String, val notHere: String, val button: String?, val trouble: String?, val bytes: ByteArray?)
