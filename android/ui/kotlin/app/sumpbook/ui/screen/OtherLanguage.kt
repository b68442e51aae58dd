package app.sumpbook.ui.screen

import androidx.compose.runtime.Composable
import androidx.compose.runtime.collectAsState
import androidx.compose.runtime.getValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.desk.LocalSettings

/** The other language, one tap away, in its own words: for whoever cannot read this one. Nothing where nothing can be set. */
@Composable
fun OtherLanguage() {
    val settings = LocalSettings.current ?: return
    val now by settings.now.collectAsState()
    val (language, words) = if (now.way.language == "es") "en" to R.string.english else "es" to R.string.spanish
    SecondaryButton(stringResource(words)) { settings.settle(now.copy(way = now.way.copy(language = language))) }
}
