package app.sumpbook.ui.screen

import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.FlowRow
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import app.sumpbook.R
import app.sumpbook.ui.mark.WalkLine
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/**
 * The line round the truck, and within it the door number, the stop and how far round it is. A press tells how to look.
 *
 * @param hints how to look stands there already: a press takes it away again
 */
@Composable
fun WalkHeader(view: StopView, hints: Boolean, look: () -> Unit) {
    val type = LocalType.current
    val record = view.record
    val words = when {
        hints -> stringResource(R.string.how_to_look_less)
        // A full frame may have them after its lines: the same press brings them before.
        view.isFull && view.cautions.isNotEmpty() -> stringResource(R.string.how_to_look_cautions)
        else -> stringResource(R.string.how_to_look)
    }
    WalkLine(record.marks, record.index.toInt() - 1, view.says, Modifier.clickable(onClickLabel = words, role = Role.Button, onClick = look)) {
        Column(Modifier.fillMaxWidth()) {
            FlowRow(Modifier.fillMaxWidth(), Arrangement.SpaceBetween, itemVerticalAlignment = Alignment.CenterVertically) {
                Text(record.door, Modifier.semantics { heading() }, style = type.doorInHeader)
                Text(view.of, style = type.line)
            }
            FlowRow(Modifier.fillMaxWidth(), Arrangement.SpaceBetween, itemVerticalAlignment = Alignment.CenterVertically) {
                Text(view.title, style = type.line)
                Text(words, style = type.help, color = LocalTokens.current.act)
            }
        }
    }
}
