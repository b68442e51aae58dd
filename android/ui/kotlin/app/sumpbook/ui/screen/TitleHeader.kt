package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.FlowRow
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.theme.LocalType

/** The title of a screen that is about no unit, and the way back. */
@Composable
fun TitleHeader(title: String, goBack: () -> Unit) {
    FlowRow(Modifier.fillMaxWidth().heightIn(56.dp), Arrangement.SpaceBetween, itemVerticalAlignment = Alignment.CenterVertically) {
        Text(title, Modifier.semantics { heading() }, style = LocalType.current.title)
        WayBack(goBack)
    }
}
