package app.sumpbook.ui.screen

import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.FlowRow
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.widthIn
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
import app.sumpbook.ui.mark.PairLook
import app.sumpbook.ui.mark.PairMark
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/**
 * The door number, what the screen is about, and the way back. With large text what it is about stands under the number.
 *
 * @param look the mark of road and air, where the screen below tells both in words
 */
@Composable
fun DoorHeader(door: String, about: String? = null, look: PairLook? = null, goBack: () -> Unit) {
    val type = LocalType.current
    Row(Modifier.fillMaxWidth().heightIn(56.dp), Arrangement.spacedBy(12.dp), Alignment.CenterVertically) {
        FlowRow(Modifier.weight(1f), Arrangement.spacedBy(8.dp), itemVerticalAlignment = Alignment.CenterVertically) {
            if (door.isNotEmpty()) Text(door, Modifier.semantics { heading() }, style = type.doorInHeader)
            look?.let { PairMark(it, times = 0.75f) }
            // Without a door number the page begins with what it is about.
            if (about != null) Text(about, if (door.isEmpty()) Modifier.semantics { heading() } else Modifier, style = type.line)
        }
        WayBack(goBack)
    }
}

/** The way back, at the same place of every header. */
@Composable
fun WayBack(goBack: () -> Unit) {
    Box(Modifier.heightIn(56.dp).widthIn(56.dp).clickable(role = Role.Button, onClick = goBack), Alignment.CenterEnd) {
        Text(stringResource(R.string.back), style = LocalType.current.line, color = LocalTokens.current.act)
    }
}
