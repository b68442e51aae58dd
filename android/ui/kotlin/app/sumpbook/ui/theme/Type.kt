package app.sumpbook.ui.theme

import androidx.compose.runtime.Immutable
import androidx.compose.runtime.staticCompositionLocalOf
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.unit.em
import androidx.compose.ui.unit.sp

/**
 * The sizes of text. 16 is the smallest on a phone, whatever it says. Figures stand in columns (`tnum`), so that a
 * digit that changed is seen.
 */
@Immutable
data class Type(val family: FontFamily) {
    private fun style(size: Int, weight: Int, lineHeight: Float = 1.3f) = TextStyle(
        fontFamily = family,
        fontWeight = FontWeight(weight),
        fontSize = size.sp,
        lineHeight = lineHeight.em,
        fontFeatureSettings = "tnum",
    )

    /** The door number where it is what the screen is about. */
    val door = style(34, 800, 1.1f)

    /** The door number in a header. */
    val doorInHeader = style(24, 800, 1.1f)

    /** The figure that is being given, and the digits of a keypad. */
    val figure = style(30, 800, 1.1f)

    /** The title of a screen without a door number. */
    val title = style(26, 800)

    /** A heading within a screen; the words of the main button. */
    val heading = style(20, 700)

    /** A line that is answered or opens something; the words of a button. */
    val line = style(18, 600, 1.2f)

    /** Running text. */
    val text = style(18, 400)

    /** The one sentence within running text that must be seen. */
    val strong = style(18, 700)

    /** What is OK, where a figure is from, tables: the smallest. */
    val help = style(16, 400)

    /** Words in a mark or over a track that are nearer their end than their neighbours. */
    val helpStrong = style(16, 700)
}

/** The sizes in force; [SumpbookTheme] provides them. */
val LocalType = staticCompositionLocalOf { Type(FontFamily.Default) }
