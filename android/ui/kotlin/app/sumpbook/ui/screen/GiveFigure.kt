package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.How
import app.sumpbook.core.ItemFigure
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.figure
import app.sumpbook.ui.words.unitWords

/**
 * A figure that a line offers to take, typed on the app's own keys. What the rules say of it stands there before it is kept,
 * and holds nothing up: where it breaks the one that counts, that it is a defect is nearer than that it is OK, and no more.
 *
 * @param keep keeps the line as OK with it
 * @param defect takes it along to the form of a defect
 */
@Composable
fun GiveFigure(unit: String, view: DefectView, asked: Offered, refused: String?, goBack: () -> Unit, keep: (ItemFigure) -> Unit, defect: (ItemFigure) -> Unit) {
    var digits by rememberSaveable { mutableStateOf("") }
    val typed = typedFigure(asked, digits)?.let { ItemFigure(it, How.OFFERED) }
    val shown by seen(unit, view.line.row.id, digits) {
        digits to (typed?.let { verdicts(unit, view.line.row, it) } ?: Verdicts())
    }
    val (of, verdicts) = (shown as? Told.Got)?.it ?: (null to null)
    // Said of these digits, not of those before the last one.
    val over = of == digits && verdicts?.over == true
    val ok = typed?.let { stringResource(R.string.figure_ok_with, figure(it.figure)) }
    val broken = stringResource(R.string.defect_after_all)
    ScreenFrame(
        header = { DoorHeader(view.door, view.line.name, goBack = goBack) },
        strips = {
            refused?.let { Strip(it, heavy = true) }
            view.line.caution?.let { Strip(it, small = true) }
        },
        secondary = typed?.let { { SecondaryButton(if (over) ok.orEmpty() else broken) { if (over) keep(it) else defect(it) } } },
        main = {
            val words = if (over) broken else ok ?: stringResource(R.string.figure_keep)
            MainPress(words, if (typed == null) stringResource(R.string.figure_first) else null) { typed?.let(if (over) defect else keep) }
        },
    ) {
        FigureKeys(asked, digits, { if (verdicts == null || verdicts.said.isEmpty()) Limits(view.limits) else SaidByRules(verdicts) }) { digits = it }
    }
}

/** A figure typed on the app's own keys, and between it and them what it means. */
@Composable
fun ColumnScope.FigureKeys(asked: Offered, digits: String, meaning: @Composable ColumnScope.() -> Unit = {}, change: (String) -> Unit) {
    Text(typedFigure(asked, digits)?.let { figure(it) } ?: unitWords(asked.unit, "-"), Modifier.fillMaxWidth(), style = LocalType.current.figure)
    meaning()
    Keypad({ if (digits.length < MOST_DIGITS) change((digits + it).trimStart('0').ifEmpty { "0" }) }, { change(digits.dropLast(1)) })
}

/** What the rules say of a figure that is being typed; nothing where none speaks of it. */
@Composable
fun ColumnScope.SaidByRules(verdicts: Verdicts) {
    if (verdicts.said.isEmpty()) return
    Strip(verdicts.said.first(), heavy = verdicts.over)
    verdicts.said.drop(1).forEach { Text(it, style = LocalType.current.help) }
}

/** Which rule a figure is held against, and its limit: read before the figure is given. Other rules stand below it, smaller. */
@Composable
fun Limits(limits: List<String>) {
    if (limits.isEmpty()) return
    Column(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp), Alignment.Start) {
        Text(limits.first(), style = LocalType.current.text)
        limits.drop(1).forEach { Text(it, style = LocalType.current.help) }
    }
}

/** No figure of a walk is longer. */
private const val MOST_DIGITS = 5
