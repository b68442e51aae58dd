package app.sumpbook.ui.desktop

import androidx.compose.foundation.isSystemInDarkTheme
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.collectAsState
import androidx.compose.runtime.getValue
import androidx.compose.runtime.remember
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.platform.Font
import androidx.compose.ui.unit.Density
import app.sumpbook.ui.desk.Light
import app.sumpbook.ui.desk.Settings
import app.sumpbook.ui.theme.SumpbookTheme
import app.sumpbook.ui.words.LocalOwnWay
import app.sumpbook.ui.words.OwnWay

/** The font of the app, from the class path. */
val Atkinson: FontFamily by lazy {
    FontFamily(
        listOf(400, 600, 700, 800).map { weight ->
            val name = "atkinson_hyperlegible_next_$weight"
            val bytes = checkNotNull(OwnWay::class.java.getResourceAsStream("/font/$name.ttf")) { "no font $name" }.use { it.readBytes() }
            Font(name, bytes, FontWeight(weight))
        },
    )
}

/** The face as the window is set now: each choice holds at once. */
@Composable
fun SettledFace(settings: Settings, content: @Composable () -> Unit) {
    val settled by settings.now.collectAsState()
    val dark = when (settled.light) {
        Light.AUTO -> isSystemInDarkTheme()
        Light.LIGHT -> false
        Light.DARK -> true
    }
    val density = LocalDensity.current
    CompositionLocalProvider(LocalDensity provides Density(density.density, maxOf(density.fontScale, settled.text))) {
        DesktopFace(settled.way, dark, settled.high, content)
    }
}

/** The app's face and words on a desk computer. */
@Composable
fun DesktopFace(way: OwnWay = OwnWay(), dark: Boolean = false, high: Boolean = false, content: @Composable () -> Unit) {
    val words = remember(way.language) { ChromeWords(way.language) }
    CompositionLocalProvider(LocalChromeWords provides words, LocalOwnWay provides way) {
        SumpbookTheme(Atkinson, dark, high, content = content)
    }
}
