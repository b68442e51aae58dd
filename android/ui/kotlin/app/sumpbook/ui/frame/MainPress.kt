package app.sumpbook.ui.frame

import androidx.compose.runtime.Composable
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
    MainButton(words, whyNot = whyNot, whyAbove = whyAbove, leftThumb = LocalOwnWay.current.leftThumb, onEarly = onEarly, onPress = onPress)
