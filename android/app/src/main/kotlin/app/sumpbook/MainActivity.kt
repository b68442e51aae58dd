package app.sumpbook

import android.os.Bundle
import androidx.activity.ComponentActivity
import androidx.activity.compose.setContent
import androidx.activity.enableEdgeToEdge
import androidx.compose.foundation.layout.safeDrawingPadding
import androidx.compose.material3.Text
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import app.sumpbook.core.TextAsk
import app.sumpbook.core.text
import app.sumpbook.ui.theme.SumpbookTheme

/** The one window. */
class MainActivity : ComponentActivity() {
    override fun onCreate(savedInstanceState: Bundle?) {
        super.onCreate(savedInstanceState)
        enableEdgeToEdge()
        val family = fontFamily(assets)
        val language = resources.configuration.locales[0].language
        setContent {
            SumpbookTheme(family) {
                Text(modifier = Modifier.safeDrawingPadding(), text = remember { text(language, TextAsk("main-try-shop", emptyMap())) })
            }
        }
    }
}
