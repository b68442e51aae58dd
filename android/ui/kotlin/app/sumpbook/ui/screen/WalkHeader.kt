package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import app.sumpbook.ui.theme.LocalType

/** The door number, the stop and how far round the truck it is. */
@Composable
fun WalkHeader(view: StopView, goBack: () -> Unit) {
    Column(Modifier.fillMaxWidth()) {
        DoorHeader(view.record.door, "${view.label} / ${view.record.of}", goBack)
        Row { Text(view.title, style = LocalType.current.line) }
    }
}
