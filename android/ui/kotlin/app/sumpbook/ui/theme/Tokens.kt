package app.sumpbook.ui.theme

import androidx.compose.runtime.Immutable
import androidx.compose.runtime.staticCompositionLocalOf
import androidx.compose.ui.graphics.Color

/**
 * Every colour there is. More ink is worse news: a state is told by how heavy a mark is and by words, so a hue only
 * ever carries intent. Nothing else in the shell is a colour.
 *
 * @property paper the ground of a screen
 * @property sheet lines, tables, the window of the sight glass
 * @property wash strips, the ring of the sight glass
 * @property ink text and marks
 * @property soft help text, text of what is not enabled
 * @property rule thin outlines; for graphics only, never for text
 * @property act petrol: you act here
 * @property onAct what is drawn on [act]
 * @property stop mulberry: stopped, or past its end
 * @property onStop what is drawn on [stop]
 * @property oil oil and nothing else; for graphics only
 * @property inOil strokes drawn on [oil]
 * @property high one of the two schemes of high contrast, where grounds are alike and outlines must part them
 */
@Immutable
data class Tokens(
    val paper: Color,
    val sheet: Color,
    val wash: Color,
    val ink: Color,
    val soft: Color,
    val rule: Color,
    val act: Color,
    val onAct: Color,
    val stop: Color,
    val onStop: Color,
    val oil: Color,
    val inOil: Color,
    val dark: Boolean,
    val high: Boolean,
)

/** The scheme for a bright day. */
val LightTokens = Tokens(
    paper = Color(0xFFF4F1E8),
    sheet = Color(0xFFFFFFFF),
    wash = Color(0xFFE6E0D0),
    ink = Color(0xFF14232B),
    soft = Color(0xFF394850),
    rule = Color(0xFF6E7B82),
    act = Color(0xFF0B4A5E),
    onAct = Color(0xFFFFFFFF),
    stop = Color(0xFF731842),
    onStop = Color(0xFFFFFFFF),
    oil = Color(0xFFB26A12),
    inOil = Color(0xFF14232B),
    dark = false,
    high = false,
)

/** The scheme for before sunrise. */
val DarkTokens = Tokens(
    paper = Color(0xFF0F181D),
    sheet = Color(0xFF18252C),
    wash = Color(0xFF24343D),
    ink = Color(0xFFF3EFE4),
    soft = Color(0xFFC3CCD0),
    rule = Color(0xFF8797A0),
    act = Color(0xFF8FD6EC),
    onAct = Color(0xFF06222C),
    stop = Color(0xFFFFB0CE),
    onStop = Color(0xFF3B0620),
    oil = Color(0xFFDB9A3F),
    inOil = Color(0xFF0F181D),
    dark = true,
    high = false,
)

/** High contrast, black on white. */
val HighLightTokens = Tokens(
    paper = Color(0xFFFFFFFF),
    sheet = Color(0xFFFFFFFF),
    wash = Color(0xFFFFFFFF),
    ink = Color(0xFF000000),
    soft = Color(0xFF000000),
    rule = Color(0xFF000000),
    act = Color(0xFF003242),
    onAct = Color(0xFFFFFFFF),
    stop = Color(0xFF560030),
    onStop = Color(0xFFFFFFFF),
    oil = Color(0xFF9A5B00),
    inOil = Color(0xFF000000),
    dark = false,
    high = true,
)

/** High contrast, white on black. */
val HighDarkTokens = Tokens(
    paper = Color(0xFF000000),
    sheet = Color(0xFF000000),
    wash = Color(0xFF000000),
    ink = Color(0xFFFFFFFF),
    soft = Color(0xFFFFFFFF),
    rule = Color(0xFFFFFFFF),
    act = Color(0xFFB5EBFF),
    onAct = Color(0xFF000000),
    stop = Color(0xFFFFC2DB),
    onStop = Color(0xFF000000),
    oil = Color(0xFFFFBF66),
    inOil = Color(0xFF000000),
    dark = true,
    high = true,
)

/** The scheme for a ground and a contrast. */
fun tokensFor(dark: Boolean, high: Boolean): Tokens = when {
    high && dark -> HighDarkTokens
    high -> HighLightTokens
    dark -> DarkTokens
    else -> LightTokens
}

/** The scheme in force; [SumpbookTheme] provides it. */
val LocalTokens = staticCompositionLocalOf { LightTokens }
