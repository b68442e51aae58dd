package app.sumpbook.ui.control

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.ExperimentalLayoutApi
import androidx.compose.foundation.layout.FlowRow
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.widthIn
import androidx.compose.foundation.selection.selectable
import androidx.compose.foundation.selection.selectableGroup
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/** One of several answers. The chosen one is filled, so that it is told without colour; none is chosen beforehand. */
@Composable
fun Chip(words: String, chosen: Boolean, modifier: Modifier = Modifier, enabled: Boolean = true, onPress: () -> Unit) {
    val tokens = LocalTokens.current
    val type = LocalType.current
    val press = rememberPress()
    val look = when {
        !enabled && !chosen -> Ground(tokens.sheet, tokens.rule, tokens.soft, dashed = true)
        chosen != press.pressed -> Ground(tokens.act, tokens.act, tokens.onAct)
        else -> Ground(tokens.sheet, tokens.act, tokens.act)
    }
    Box(
        modifier.widthIn(min = Target).heightIn(min = Target)
            .ground(look, RoundedCornerShape(Corner), press, tokens)
            .selectable(chosen, press.source, indication = null, enabled = enabled, role = Role.RadioButton, onClick = onPress)
            .padding(horizontal = 14.dp, vertical = 8.dp),
        contentAlignment = Alignment.Center,
    ) {
        Text(words, style = type.line, color = look.words, textAlign = TextAlign.Center)
    }
}

/** Chips 12 apart, in as many rows as they need. */
@OptIn(ExperimentalLayoutApi::class)
@Composable
fun Chips(modifier: Modifier = Modifier, content: @Composable () -> Unit) {
    FlowRow(
        modifier.fillMaxWidth().selectableGroup(),
        horizontalArrangement = Arrangement.spacedBy(Gap),
        verticalArrangement = Arrangement.spacedBy(Gap),
    ) { content() }
}
