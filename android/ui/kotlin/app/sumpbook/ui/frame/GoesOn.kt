package app.sumpbook.ui.frame

import androidx.compose.foundation.ScrollState
import androidx.compose.foundation.layout.Spacer
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawBehind
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.control.Gap
import app.sumpbook.ui.theme.LocalTokens

/** Between what scrolls and what is fixed: a line, while there is more below. */
@Composable
internal fun GoesOn(scroll: ScrollState) {
    val rule = LocalTokens.current.rule
    Spacer(
        Modifier.fillMaxWidth().height(Gap).drawBehind {
            val y = 1.dp.toPx()
            if (scroll.canScrollForward) drawLine(rule, Offset(0f, y), Offset(size.width, y), 2.dp.toPx())
        },
    )
}
