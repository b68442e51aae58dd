package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.runtime.Composable
import androidx.compose.ui.res.stringResource
import app.sumpbook.R

/** A question that is answered yes or no, or not at all: none is chosen beforehand. */
@Composable
fun ColumnScope.YesOrNo(question: String, said: Boolean?, say: (Boolean) -> Unit) {
    val answers = listOf("yes" to stringResource(R.string.yes), "no" to stringResource(R.string.no))
    Asked(question, answers, said?.let { if (it) "yes" else "no" }) { say(it == "yes") }
}
