package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.FlowRow
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import app.sumpbook.ui.mark.WalkLine
import app.sumpbook.ui.theme.LocalType

/** The line round the truck, and within it the door number, the stop and how far round it is. */
@Composable
fun WalkHeader(view: StopView) {
    val type = LocalType.current
    val record = view.record
    WalkLine(record.marks, record.index.toInt() - 1, view.says) {
        Column(Modifier.fillMaxWidth()) {
            FlowRow(Modifier.fillMaxWidth(), Arrangement.SpaceBetween, itemVerticalAlignment = Alignment.CenterVertically) {
                Text(record.door, Modifier.semantics { heading() }, style = type.doorInHeader)
                Text(view.of, style = type.line)
            }
            Text(view.title, style = type.line)
        }
    }
}
