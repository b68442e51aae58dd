package app.sumpbook.ui.frame

import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import app.sumpbook.ui.control.MainButton
import app.sumpbook.ui.words.LocalOwnWay

/**
 * The main button at this person's thumb.
 *
 * @param whyNot why it may not be pressed yet
 * @param whyAbove the reason stands above it; not where it stands on the button itself, or is over in a moment: then
 *   nothing may move
 * @param onEarly what a press does even then
 */
@Composable
fun MainPress(words: String, whyNot: String? = null, whyAbove: Boolean = true, onEarly: (() -> Unit)? = null, onPress: () -> Unit) =
    MainButton(words, Modifier.testTag(MAIN), whyNot = whyNot, whyAbove = whyAbove, leftThumb = LocalOwnWay.current.leftThumb, onEarly = onEarly, onPress = onPress)

/** The tag of the main button. */
const val MAIN = "main"
