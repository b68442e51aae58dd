package app.sumpbook

import android.content.res.AssetManager
import androidx.compose.ui.text.font.Font
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight

/** The font of `ui/font`, which lies in the package as it is. */
fun fontFamily(assets: AssetManager): FontFamily = FontFamily(
    listOf(400, 600, 700, 800).map { Font("atkinson_hyperlegible_next_$it.ttf", assets, FontWeight(it)) },
)
