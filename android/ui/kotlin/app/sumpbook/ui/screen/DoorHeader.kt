package app.sumpbook.ui.screen

import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/** The door number, what the screen is about, and the way back. */
@Composable
fun DoorHeader(door: String, about: String? = null, goBack: () -> Unit) {
    Row(Modifier.fillMaxWidth().heightIn(56.dp), Arrangement.spacedBy(12.dp), Alignment.CenterVertically) {
        Row(Modifier.weight(1f), Arrangement.spacedBy(8.dp), Alignment.CenterVertically) {
            Text(door, Modifier.semantics { heading() }, style = LocalType.current.doorInHeader)
            if (about != null) Text(about, style = LocalType.current.line)
        }
        Row(
            Modifier.heightIn(56.dp).clickable(role = Role.Button, onClick = goBack),
            verticalAlignment = Alignment.CenterVertically,
        ) { Text(stringResource(R.string.back), style = LocalType.current.line, color = LocalTokens.current.act) }
    }
}
