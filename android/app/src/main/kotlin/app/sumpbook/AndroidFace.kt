package app.sumpbook

import android.app.UiModeManager
import android.content.Context
import android.os.Build
import android.provider.Settings
import androidx.compose.foundation.isSystemInDarkTheme
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.remember
import androidx.compose.ui.platform.LocalContext
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.unit.Density
import app.sumpbook.ui.desk.Light
import app.sumpbook.ui.desk.Settled
import app.sumpbook.ui.theme.SumpbookTheme
import app.sumpbook.ui.words.LocalOwnWay

/** The app's face on a telephone: as it is set here, and as the system asks for where nothing is set. */
@Composable
fun AndroidFace(family: FontFamily, settled: Settled, content: @Composable () -> Unit) {
    val context = LocalContext.current
    val density = LocalDensity.current
    val dark = when (settled.light) {
        Light.AUTO -> isSystemInDarkTheme()
        Light.LIGHT -> false
        Light.DARK -> true
    }
    val still = remember(context) { Settings.Global.getFloat(context.contentResolver, Settings.Global.ANIMATOR_DURATION_SCALE, 1f) == 0f }
    CompositionLocalProvider(
        LocalDensity provides Density(density.density, maxOf(density.fontScale, settled.text)),
        LocalOwnWay provides settled.way,
    ) {
        SumpbookTheme(family, dark, settled.high || systemAsksForContrast(context), still, content)
    }
}

/** From Android 14 on a person can ask every app for more contrast: 0 is the usual, 1 the most. */
private fun systemAsksForContrast(context: Context): Boolean =
    Build.VERSION.SDK_INT >= Build.VERSION_CODES.UPSIDE_DOWN_CAKE && context.getSystemService(UiModeManager::class.java)!!.contrast >= 0.5f
