package app.sumpbook.ui.frame

import androidx.compose.foundation.background
import androidx.compose.foundation.border
import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/** The main button. */
@Composable
fun MainPress(label: String, whyNot: String? = null, onEarly: (() -> Unit)? = null, press: () -> Unit) {
    val enabled = whyNot == null
    val tokens = LocalTokens.current
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp)) {
        if (!enabled && whyNot != null) Text(whyNot, style = LocalType.current.text)
        Box(
            Modifier.fillMaxWidth().heightIn(64.dp).background(if (enabled) tokens.act else tokens.paper)
                .border(2.dp, tokens.rule).clickable(enabled || onEarly != null, role = Role.Button) { if (enabled) press() else onEarly?.invoke() }.padding(12.dp),
            Alignment.Center,
        ) { Text(label, style = LocalType.current.heading, color = if (enabled) tokens.onAct else tokens.soft) }
    }
}

/** A row that opens or answers something. */
@Composable
fun RowPress(label: String, modifier: Modifier = Modifier, help: String? = null, press: () -> Unit) {
    val tokens = LocalTokens.current
    Column(
        modifier.fillMaxWidth().heightIn(56.dp).background(tokens.sheet).border(2.dp, tokens.rule)
            .clickable(role = Role.Button, onClick = press).padding(12.dp, 6.dp),
        Arrangement.Center,
    ) {
        Text(label, style = LocalType.current.line)
        if (help != null) Text(help, style = LocalType.current.help, color = tokens.soft)
    }
}

/** A button of the secondary row. */
@Composable
fun SecondaryPress(label: String, press: () -> Unit) {
    val tokens = LocalTokens.current
    Box(
        Modifier.heightIn(56.dp).border(2.dp, tokens.rule).clickable(role = Role.Button, onClick = press).padding(12.dp),
        Alignment.Center,
    ) { Text(label, style = LocalType.current.line) }
}

/** A strip: something to know before one goes on. */
@Composable
fun StripWords(words: String) {
    val tokens = LocalTokens.current
    Text(words, Modifier.fillMaxWidth().background(tokens.wash).padding(12.dp, 6.dp), style = LocalType.current.help)
}
