package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.pluralStringResource
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.PinChosen
import app.sumpbook.core.PinSaid
import app.sumpbook.core.Signed
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Act
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalType

/** How many digits a PIN is asked with here. */
const val PIN_DIGITS = 6

/**
 * A signature as it is being given: the PIN typed so far, the first of two when one is chosen, and why the last one was not
 * taken. The PIN itself is looked at by the core, and nothing of it is kept here.
 */
@Stable
class Signing(val signer: Signer, private val what: String, private val name: String, private val act: Act, private val sign: Reader.(Signed) -> Unit, private val then: () -> Unit) {
    /** Digits typed. */
    var typed by mutableStateOf("")
        private set

    /** The first time a new PIN was typed; none while none is being chosen. */
    private var first by mutableStateOf<String?>(null)

    /** Why the last PIN was not taken. */
    var wrong by mutableStateOf<String?>(null)
        private set

    /** A PIN is typed a second time, to be sure of it. */
    val again: Boolean get() = first != null

    /** Enough digits. */
    val full: Boolean get() = typed.length >= PIN_DIGITS

    /** One digit more. */
    fun digit(one: Int) {
        if (!full) typed += one
        wrong = null
    }

    /** The last digit back. */
    fun erase() {
        typed = typed.dropLast(1)
    }

    /** Signs, and the record says that no PIN was given. */
    fun without() = act.now({ sign(Signed(pinGiven = false, trainer = signer.trainer)) }) { then() }

    /** Signs with the PIN typed, or goes on choosing one. */
    fun give(chosen: Boolean) {
        val pin = typed
        typed = ""
        val before = first
        when {
            chosen -> act.now({ given(pin) }, ::goOn)
            before == null -> first = pin
            before == pin -> act.now({ choose(pin) }, ::goOn)
            else -> {
                first = null
                wrong = NOT_THE_SAME
            }
        }
    }

    private fun goOn(why: String?) {
        wrong = why
        if (why == null) then() else first = null
    }

    /** Null when it was signed; else why not, in words. */
    private fun Reader.given(pin: String): String? = when (val said = phone.givePin(signer.person, pin)) {
        PinSaid.Right -> {
            sign(Signed(pinGiven = true, trainer = signer.trainer))
            null
        }
        is PinSaid.Wrong ->
            if (said.waitS > 0) words("error-wrong-pin", "name" to name, "what" to what, "seconds" to said.waitS)
            else words("error-wrong-pin-again", "name" to name, "what" to what)
        is PinSaid.Wait -> words("error-pin-wait", "seconds" to said.waitS)
        PinSaid.NotChosen -> NOT_THE_SAME
    }

    private fun Reader.choose(pin: String): String? = when (val said = phone.choosePin(signer.person, pin, null)) {
        PinChosen.Kept -> {
            sign(Signed(pinGiven = true, trainer = signer.trainer))
            null
        }
        is PinChosen.Not -> words(said.textKey)
    }

    companion object {
        /** The two did not agree: said by the shell's own words. */
        const val NOT_THE_SAME = ""
    }
}

/** A signature under something; [then] when it stands. */
@Composable
fun rememberSigning(signer: Signer, what: String, name: String, act: Act, sign: Reader.(Signed) -> Unit, then: () -> Unit): Signing =
    remember(signer, name, act) { Signing(signer, what, name, act, sign, then) }

/** Digits, dots and why the last one was not taken. */
@Composable
fun PinPart(signing: Signing, chosen: Boolean) {
    signing.wrong?.let { Strip(it.ifEmpty { stringResource(R.string.pin_not_the_same) }, heavy = true) }
    val asks = when {
        chosen -> stringResource(R.string.pin)
        signing.again -> stringResource(R.string.pin_again)
        else -> stringResource(R.string.pin_choose)
    }
    val says = pluralStringResource(R.plurals.pin_digits_typed, signing.typed.length, signing.typed.length)
    Row(
        Modifier.fillMaxWidth().heightIn(40.dp).clearAndSetSemantics { contentDescription = "$asks. $says" },
        Arrangement.SpaceBetween,
        Alignment.CenterVertically,
    ) {
        Text(asks, Modifier.weight(1f), style = LocalType.current.line)
        Text("\u25CF ".repeat(signing.typed.length) + "\u00B7 ".repeat(PIN_DIGITS - signing.typed.length), style = LocalType.current.figure)
    }
    Keypad(signing::digit, signing::erase)
}
