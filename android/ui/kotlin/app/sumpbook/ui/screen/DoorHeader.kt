package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.sizeIn
import androidx.compose.foundation.clickable
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.ui.control.Target
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/** The door number, what the screen is about, and the way back. With large text what it is about has a line of its own. */
@Composable
fun DoorHeader(door: String, about: String? = null, goBack: () -> Unit) {
    val type = LocalType.current
    val beside = LocalDensity.current.fontScale <= 1.15f
    Column(Modifier.fillMaxWidth()) {
        Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(12.dp), Alignment.CenterVertically) {
            Row(Modifier.weight(1f), Arrangement.spacedBy(8.dp), Alignment.CenterVertically) {
                Text(door, Modifier.semantics { heading() }, style = type.doorInHeader)
                if (about != null && beside) Text(about, style = type.line)
            }
            Box(
                Modifier.sizeIn(Target, Target).clickable(role = Role.Button, onClick = goBack),
                Alignment.CenterEnd,
            ) { Text(stringResource(R.string.back), style = type.line, color = LocalTokens.current.act) }
        }
        if (about != null && !beside) Text(about, style = type.line)
    }
}
