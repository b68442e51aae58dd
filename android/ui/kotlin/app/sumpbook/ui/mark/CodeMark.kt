package app.sumpbook.ui.mark

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.Dp
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel
import com.google.zxing.qrcode.encoder.Encoder

/** Words as a QR code, black on white in every theme: a camera reads nothing else surely. [says] is what is read of it. */
@Composable
fun CodeMark(words: String, side: Dp, says: String, modifier: Modifier = Modifier) {
    val code = remember(words) { Encoder.encode(words, ErrorCorrectionLevel.M).matrix }
    Canvas(modifier.size(side).semantics { contentDescription = says }) {
        drawRect(Color.White)
        val one = size.minDimension / (code.width + 2 * QUIET)
        for (y in 0 until code.height) {
            for (x in 0 until code.width) {
                // A hair larger: no seam of the ground shows between two of them.
                if (code[x, y].toInt() == 1) drawRect(Color.Black, Offset((x + QUIET) * one, (y + QUIET) * one), Size(one + HAIR, one + HAIR))
            }
        }
    }
}

/** Squares of white round it, as the standard asks. */
private const val QUIET = 4
private const val HAIR = 0.5f
