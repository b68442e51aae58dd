package app.sumpbook.ui.control

import androidx.compose.foundation.interaction.MutableInteractionSource
import androidx.compose.foundation.interaction.collectIsFocusedAsState
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.foundation.text.BasicTextField
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.remember
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.SolidColor
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/** Words in the driver's own mouth, typed on the system's keyboard. Its name stands above it, always. */
@Composable
fun WordsField(name: String, words: String, modifier: Modifier = Modifier, onChange: (String) -> Unit) {
    val tokens = LocalTokens.current
    val type = LocalType.current
    val source = remember { MutableInteractionSource() }
    val focused by source.collectIsFocusedAsState()
    val press = Press(source, pressed = false, focused = focused)
    Column(modifier.fillMaxWidth()) {
        Text(name, Modifier.padding(bottom = 4.dp), style = type.line, color = tokens.ink)
        BasicTextField(
            words,
            onChange,
            Modifier.fillMaxWidth().heightIn(min = Target).semantics { contentDescription = name },
            textStyle = type.text.copy(color = tokens.ink),
            cursorBrush = SolidColor(tokens.act),
            interactionSource = source,
            decorationBox = { field ->
                Box(
                    Modifier.fillMaxWidth().heightIn(min = Target)
                        .ground(Ground(tokens.sheet, tokens.ink, tokens.ink), RoundedCornerShape(Corner), press, tokens)
                        .padding(horizontal = 12.dp, vertical = 8.dp),
                    contentAlignment = Alignment.CenterStart,
                ) { field() }
            },
        )
    }
}
