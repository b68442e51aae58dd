package app.sumpbook.ui.control

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.ExperimentalLayoutApi
import androidx.compose.foundation.layout.FlowRow
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.FlowRowScope
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.widthIn
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.disabled
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.semantics.stateDescription
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/**
 * A press beside the main one: only outlined, so that it never looks like the main one.
 *
 * @param whyNot why it may not be pressed, in words above it; none: it may
 */
@Composable
fun SecondaryButton(
    words: String,
    modifier: Modifier = Modifier,
    whyNot: String? = null,
    side: Dp = 12.dp,
    onPress: () -> Unit,
) {
    val tokens = LocalTokens.current
    val type = LocalType.current
    val press = rememberPress()
    val look = when {
        whyNot != null -> Ground(tokens.sheet, tokens.rule, tokens.soft, dashed = true)
        press.pressed -> Ground(tokens.ink, tokens.ink, tokens.sheet)
        else -> Ground(tokens.sheet, tokens.ink, tokens.ink)
    }
    Column(modifier) {
        if (whyNot != null) Text(whyNot, Modifier.padding(bottom = 4.dp), style = type.help, color = tokens.soft)
        Box(
            Modifier.fillMaxWidth().heightIn(min = Target)
                .ground(look, RoundedCornerShape(Corner), press, tokens)
                .pressed(press, enabled = whyNot == null, onPress = onPress)
                .semantics {
                    if (whyNot != null) {
                        stateDescription = whyNot
                        disabled()
                    }
                }
                .padding(horizontal = side, vertical = 8.dp),
            contentAlignment = Alignment.Center,
        ) {
            Text(words, style = type.line, color = look.words, textAlign = TextAlign.Center)
        }
    }
}

/** Buttons beside each other as long as they fit, 12 apart, else under each other. */
@OptIn(ExperimentalLayoutApi::class)
@Composable
fun SecondaryRow(modifier: Modifier = Modifier, content: @Composable FlowRowScope.() -> Unit) {
    FlowRow(
        modifier.fillMaxWidth(),
        horizontalArrangement = Arrangement.spacedBy(Gap),
        verticalArrangement = Arrangement.spacedBy(Gap),
        content = content,
    )
}

/** One of a row: as wide as its words ask, and it takes its share of what is left. */
@OptIn(ExperimentalLayoutApi::class)
@Composable
fun FlowRowScope.InRow(words: String, whyNot: String? = null, onPress: () -> Unit) {
    SecondaryButton(words, Modifier.widthIn(min = Target).weight(1f, fill = true), whyNot, onPress = onPress)
}
