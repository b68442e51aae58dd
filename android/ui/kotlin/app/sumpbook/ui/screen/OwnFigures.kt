package app.sumpbook.ui.screen

import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.OwnFigures
import app.sumpbook.core.PinSaid
import app.sumpbook.core.pinDigits
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.minutesAndSeconds

/** What one's own records say of one's own ways, before anybody else asks: behind the PIN, where one was chosen. */
@Composable
fun OwnFiguresScreen(signer: Signer) {
    val back = LocalBackStack.current
    val act = rememberAct()
    var given by remember { mutableStateOf(false) }
    var wrong by remember { mutableStateOf(false) }
    val asks by seen(signer.person) { phone.pinChosen(signer.person) to pinDigits().toInt() }
    val (asked, digits) = (asks as? Told.Got)?.it ?: return
    ScreenFrame(
        header = { TitleHeader(stringResource(R.string.own_figures)) { back.back() } },
        strips = {
            act.refused?.let { Strip(sentence(it), heavy = true) }
            if (wrong) Strip(stringResource(R.string.own_figures_wrong_pin), heavy = true)
        },
        main = { MainPress(stringResource(R.string.settings_done)) { back.back() } },
    ) {
        if (asked && !given) {
            OwnPin(digits) { pin ->
                wrong = false
                act.now({ phone.givePin(signer.person, pin) }) { said -> if (said is PinSaid.Right) given = true else wrong = true }
            }
        } else {
            Figures(signer)
        }
    }
}

@Composable
private fun OwnPin(digits: Int, give: (String) -> Unit) {
    var typed by remember { mutableStateOf("") }
    Text(stringResource(R.string.own_figures_pin), style = LocalType.current.text)
    Text(stringResource(R.string.leave_pin_digits, typed.length, digits), style = LocalType.current.heading)
    Keypad(
        {
            typed += it
            if (typed.length == digits) {
                give(typed)
                typed = ""
            }
        },
        { typed = typed.dropLast(1) },
    )
}

@Composable
private fun Figures(signer: Signer) {
    val shown by seen(signer.person) { phone.ownFigures(signer.person) }
    when (val told = shown) {
        null -> Unit
        is Told.Refused -> Strip(sentence(told.why), heavy = true)
        is Told.Got -> {
            Text(stringResource(R.string.own_figures_of, told.it.person.orEmpty()), style = LocalType.current.text)
            Section(stringResource(R.string.own_figures_walks), walks(told.it))
            Section(stringResource(R.string.own_figures_readings), readings(told.it))
            Text(stringResource(R.string.own_figures_why), style = LocalType.current.help)
        }
    }
}

@Composable
private fun walks(of: OwnFigures): List<String> = listOfNotNull(
    stringResource(R.string.own_walks, of.walks.toInt(), of.of.toInt()),
    of.medianS?.let { stringResource(R.string.own_median, minutesAndSeconds(it.toLong() * 1_000)) },
    of.crewMedianS?.let { stringResource(R.string.own_crew_median, minutesAndSeconds(it.toLong() * 1_000)) },
    stringResource(R.string.own_quick, of.quick.toInt()),
    stringResource(R.string.own_with_pin, of.withPin.toInt()),
    stringResource(R.string.own_defects, of.defects.toInt()),
    stringResource(R.string.own_not_checked, of.couldNotCheck.toInt()),
)

@Composable
private fun readings(of: OwnFigures): List<String> = listOf(
    stringResource(R.string.own_hours, of.hours.toInt(), of.hoursEndIn0.toInt()),
    stringResource(R.string.own_glass, of.glass.toInt(), of.glassAt50.toInt()),
)
