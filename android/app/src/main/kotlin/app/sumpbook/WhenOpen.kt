package app.sumpbook

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.safeDrawingPadding
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.unit.dp
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.told
import app.sumpbook.ui.screen.sentence
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.withContext

/** Opens the book off the drawing thread, and shows it when it is open; till then, and when it does not open, words. */
@Composable
fun WhenOpen(app: SumpbookApp, content: @Composable (Desk) -> Unit) {
    var opened by remember { mutableStateOf<Told<Desk?>?>(null) }
    LaunchedEffect(app) { opened = withContext(Dispatchers.IO) { told { app.desk() } } }
    when (val now = opened) {
        null -> Alone(stringResource(R.string.opening))
        is Told.Refused -> Alone(sentence(now.why))
        is Told.Got -> {
            val desk = now.it
            if (desk == null) Alone(stringResource(R.string.not_set_up)) else content(desk)
        }
    }
}

@Composable
private fun Alone(words: String) {
    Box(Modifier.fillMaxSize().background(LocalTokens.current.paper).safeDrawingPadding().padding(16.dp)) {
        Text(words, style = LocalType.current.text)
    }
}
