package app.sumpbook.ui.desktop

import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.remember
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.platform.Font
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

/** The app's face and words on a desk computer. */
@Composable
fun DesktopFace(way: OwnWay = OwnWay(), dark: Boolean = false, high: Boolean = false, content: @Composable () -> Unit) {
    val words = remember(way.language) { ChromeWords(way.language) }
    CompositionLocalProvider(LocalChromeWords provides words, LocalOwnWay provides way) {
        SumpbookTheme(Atkinson, dark, high, content = content)
    }
}
