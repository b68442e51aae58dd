package app.sumpbook.ui.frame

import androidx.compose.runtime.Composable
import androidx.compose.runtime.DisposableEffect
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import app.sumpbook.ui.control.MainButton
import app.sumpbook.ui.words.LocalOwnWay
import kotlinx.coroutines.launch

/**
 * The main button at this person's thumb.
 *
 * @param whyNot why it may not be pressed yet
 * @param whyAbove the reason stands above it; not where it stands on the button itself, or is over in a moment: then
 *   nothing may move
 * @param onEarly what a press does even then
 */
@Composable
fun MainPress(words: String, whyNot: String? = null, whyAbove: Boolean = true, onEarly: (() -> Unit)? = null, onPress: () -> Unit) {
    val scope = rememberCoroutineScope()
    // Where there is no room for the reason it stands at the end of the page, and a press leads to it.
    val thumb = LocalAtTheThumb.current?.takeIf { it.crowded && whyAbove }
    val apart = whyNot.takeIf { thumb != null }
    DisposableEffect(thumb, apart) {
        thumb?.reason = apart
        onDispose { thumb?.reason = null }
    }
    val lead = thumb?.takeIf { apart != null }?.let { { scope.launch { it.lead() }; Unit } }
    MainButton(
        words, Modifier.testTag(MAIN), whyNot, whyAbove = whyAbove && apart == null, leftThumb = LocalOwnWay.current.leftThumb,
        onEarly = onEarly ?: lead, onPress = onPress,
    )
}

/** The tag of the main button. */
const val MAIN = "main"
