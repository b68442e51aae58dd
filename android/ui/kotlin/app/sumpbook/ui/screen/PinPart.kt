package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.res.pluralStringResource
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.Signed
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.Places
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Act
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalType

/** A signature under something; [then] when it stands. */
@Composable
fun rememberSigning(signer: Signer, what: String, act: Act, sign: Reader.(Signed) -> Unit, then: () -> Unit): Signing =
    remember(signer, act) { Signing(signer, what, act, sign, then) }

/** What the main button of a signature says: [sign] when it is the last press. */
@Composable
fun signLabel(signing: Signing, by: SignedBy, sign: String): String {
    val trainer = by.trainer
    return when {
        !signing.asked(by).chosen && !signing.again -> stringResource(R.string.pin_go_on)
        trainer != null && !signing.last -> stringResource(R.string.pin_next_of, trainer.name)
        else -> sign
    }
}

/** Why it cannot be signed yet: nobody named to learn with, digits still to come. */
@Composable
fun pinWhyNot(signing: Signing, by: SignedBy): String? {
    val left = signing.asked(by).digits - signing.typed.length
    return when {
        by.trainers.isNotEmpty() -> stringResource(R.string.learning_with_first)
        left > 0 -> pluralStringResource(R.plurals.pin_digits_left, left, left)
        else -> null
    }
}

/** Goes on without a PIN; said to be whose where two sign. */
@Composable
fun WithoutPin(signing: Signing, by: SignedBy) {
    val words = when {
        by.trainer == null -> stringResource(R.string.sign_without_pin)
        signing.last -> stringResource(R.string.sign_without_pin_of, signing.asked(by).name)
        else -> stringResource(R.string.pin_go_on_without, signing.asked(by).name)
    }
    SecondaryButton(words) { signing.without() }
}

/** A learner who has named nobody says with whom, before the signature. */
@Composable
fun ColumnScope.LearnsWith(by: SignedBy, choose: (String) -> Unit) {
    Text(stringResource(R.string.learning_with, by.own.name), Modifier.semantics { heading() }, style = LocalType.current.heading)
    by.trainers.forEach { trainer -> Line(trainer.name) { choose(trainer.id) } }
}

/** Digits, their places and why the last one was not taken; whose PIN it is stands there where two sign. */
@Composable
fun PinPart(signing: Signing, by: SignedBy) {
    val of = signing.asked(by)
    signing.wrong?.let { Strip(it.ifEmpty { stringResource(R.string.pin_not_the_same) }, heavy = true) }
    val asks = when {
        of.chosen -> stringResource(R.string.pin)
        signing.again -> stringResource(R.string.pin_again)
        of.newAsked -> stringResource(R.string.pin_choose_new, of.digits)
        else -> stringResource(R.string.pin_choose, of.digits)
    }
    Column(verticalArrangement = Arrangement.spacedBy(4.dp)) {
        PinPlaces(if (by.trainer == null) asks else "${of.name}: $asks", signing.typed, of.digits)
        Keypad({ signing.digit(it, of.digits) }, signing::erase)
    }
}

@Composable
private fun PinPlaces(asks: String, typed: String, of: Int) {
    val says = pluralStringResource(R.plurals.pin_digits_typed, typed.length, typed.length)
    val whole = Modifier.fillMaxWidth().clearAndSetSemantics { contentDescription = "$asks. $says" }
    if (LocalDensity.current.fontScale > 1.3f) {
        // Beside each other the words would break.
        Column(whole, Arrangement.spacedBy(4.dp)) {
            Text(asks, style = LocalType.current.line)
            Places(typed, of, hidden = true)
        }
    } else {
        Row(whole, Arrangement.SpaceBetween, Alignment.CenterVertically) {
            Text(asks, Modifier.weight(1f), style = LocalType.current.line)
            Places(typed, of, hidden = true)
        }
    }
}
