package app.sumpbook.ui.theme

import androidx.compose.foundation.isSystemInDarkTheme
import androidx.compose.foundation.text.selection.LocalTextSelectionColors
import androidx.compose.foundation.text.selection.TextSelectionColors
import androidx.compose.material3.ColorScheme
import androidx.compose.material3.LocalContentColor
import androidx.compose.material3.LocalTextStyle
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.darkColorScheme
import androidx.compose.material3.lightColorScheme
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.remember
import androidx.compose.runtime.staticCompositionLocalOf
import androidx.compose.ui.text.font.FontFamily

/** Nothing may move: the system asks so. A timer then counts in figures and a level line jumps. */
val LocalStill = staticCompositionLocalOf { false }

/**
 * The face of the app: colours, sizes of text, and whether anything may move.
 *
 * @param family Atkinson Hyperlegible Next, read from `ui/font` as each platform reads a font
 */
@Composable
fun SumpbookTheme(
    family: FontFamily,
    dark: Boolean = isSystemInDarkTheme(),
    high: Boolean = false,
    still: Boolean = false,
    content: @Composable () -> Unit,
) {
    val tokens = tokensFor(dark, high)
    val type = remember(family) { Type(family) }
    MaterialTheme(colorScheme = schemeOf(tokens)) {
        CompositionLocalProvider(
            LocalTokens provides tokens,
            LocalType provides type,
            LocalStill provides still,
            LocalTextStyle provides type.text,
            LocalContentColor provides tokens.ink,
            LocalTextSelectionColors provides TextSelectionColors(tokens.act, tokens.wash),
            content = content,
        )
    }
}

/** What the library's own parts are told, so that a part taken from it cannot bring a colour of its own. */
private fun schemeOf(tokens: Tokens): ColorScheme = with(tokens) {
    val base = if (dark) darkColorScheme() else lightColorScheme()
    base.copy(
        primary = act, onPrimary = onAct, primaryContainer = act, onPrimaryContainer = onAct,
        secondary = act, onSecondary = onAct, secondaryContainer = wash, onSecondaryContainer = ink,
        tertiary = act, onTertiary = onAct, tertiaryContainer = wash, onTertiaryContainer = ink,
        error = stop, onError = onStop, errorContainer = stop, onErrorContainer = onStop,
        background = paper, onBackground = ink, surface = paper, onSurface = ink,
        surfaceVariant = sheet, onSurfaceVariant = soft, surfaceTint = paper,
        surfaceContainer = sheet, surfaceContainerLow = sheet, surfaceContainerLowest = sheet,
        surfaceContainerHigh = wash, surfaceContainerHighest = wash,
        outline = rule, outlineVariant = rule, inverseSurface = ink, inverseOnSurface = paper, inversePrimary = paper,
    )
}
