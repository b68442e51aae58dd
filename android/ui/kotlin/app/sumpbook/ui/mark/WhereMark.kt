package app.sumpbook.ui.mark

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.CornerRadius
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.unit.dp
import app.sumpbook.core.Place
import app.sumpbook.core.WhereRow
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.Tokens

/** Where an entry stands. */
enum class Where(/** Key of its words. */ val key: String) {
    /** Only here. */
    OnPhone("where-on-phone"),

    /** A receipt of the shop covers it. */
    AtShop("where-at-shop"),

    /** At the shop, kept and shown, not counted yet. */
    Aside("where-aside"),
    ;

    companion object {
        /** Where a row of the record stands. */
        fun of(row: WhereRow): Where = when {
            row.aside != null -> Aside
            row.place == Place.AT_SHOP -> AtShop
            else -> OnPhone
        }
    }
}

/** Where an entry stands, drawn: a phone, a house, a house only outlined. Words stand beside it and are what is read. */
@Composable
fun WhereMark(where: Where, modifier: Modifier = Modifier, times: Float = 1f) {
    val tokens = LocalTokens.current
    Canvas(modifier.size((20 * times).dp, (24 * times).dp).clearAndSetSemantics {}) {
        inDp(times) { where(where, tokens) }
    }
}

private val House by lazy { path("M10 2L19 10V22H1V10Z") }

private fun DrawScope.where(where: Where, tokens: Tokens) {
    when (where) {
        Where.OnPhone ->
            drawRoundRect(tokens.ink, Offset(4f, 2f), Size(12f, 20f), CornerRadius(3f), style = line(2.5f))
        Where.AtShop -> drawPath(House, tokens.ink)
        Where.Aside -> {
            drawPath(House, tokens.ink, style = line(2f, 4f, 3f))
            drawRect(tokens.ink, Offset(8.5f, 7.5f), Size(3f, 8f))
            drawCircle(tokens.ink, 1.75f, Offset(10f, 18.5f))
        }
    }
}
