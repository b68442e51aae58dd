package app.sumpbook.ui.mark

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.Composable
import androidx.compose.ui.ImageComposeScene
import androidx.compose.ui.Modifier
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.words.OwnWay
import org.jetbrains.skia.Bitmap
import kotlin.math.abs
import kotlin.test.assertTrue

/** One of the four themes. */
data class Theme(val dark: Boolean, val high: Boolean) {
    companion object {
        val ALL = listOf(Theme(false, false), Theme(true, false), Theme(false, true), Theme(true, true))
    }
}

/** What is drawn as a printer without colour has it: one lightness a pixel, 0 black to 1 white, two pixels a dp. */
class Grey(val wide: Int, private val light: FloatArray) {
    /** The share of the pixels that somebody would see differ. */
    fun differs(other: Grey): Float =
        light.indices.count { abs(light[it] - other.light[it]) > SEEN } / light.size.toFloat()

    private companion object {
        /** A step that is seen in sunlight and survives a black printer. */
        const val SEEN = 0.3f
    }
}

/** Draws something of so many dp in a theme and takes its colours away. */
fun grey(wide: Int, high: Int, theme: Theme, content: @Composable () -> Unit): Grey {
    val scene = ImageComposeScene(wide * 2, high * 2, Density(2f)) {
        DesktopFace(OwnWay(), theme.dark, theme.high) {
            Box(Modifier.size(wide.dp, high.dp).background(LocalTokens.current.paper)) { content() }
        }
    }
    val pixels = Bitmap.makeFromImage(scene.render())
    scene.close()
    val light = FloatArray(pixels.width * pixels.height)
    for (y in 0 until pixels.height) {
        for (x in 0 until pixels.width) {
            val color = pixels.getColor(x, y)
            // ITU-R BT.709 luma, as a grey print of it is made.
            light[y * pixels.width + x] =
                (0.2126f * (color shr 16 and 255) + 0.7152f * (color shr 8 and 255) + 0.0722f * (color and 255)) / 255f
        }
    }
    return Grey(pixels.width, light)
}

/** Every two of these are told apart in every theme without colour: at least [share] of the pixels differ plainly. */
fun <T> assertToldApart(wide: Int, high: Int, states: Map<String, T>, share: Float = 0.02f, draw: @Composable (T) -> Unit) {
    for (theme in Theme.ALL) {
        val drawn = states.mapValues { (_, state) -> grey(wide, high, theme) { draw(state) } }.toList()
        for ((index, one) in drawn.withIndex()) {
            for (other in drawn.drop(index + 1)) {
                val found = one.second.differs(other.second)
                assertTrue(found >= share, "$theme: '${one.first}' and '${other.first}' differ in $found of the picture, least $share")
            }
        }
    }
}
