package app.sumpbook.ui.screen

import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import app.sumpbook.core.PersonHere
import app.sumpbook.core.PinChosen
import app.sumpbook.core.PinSaid
import app.sumpbook.core.Signed
import app.sumpbook.core.pinDigits
import app.sumpbook.ui.desk.Act
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.place.Signer

/**
 * Whose PIN is asked.
 *
 * @property chosen the person has one on this phone already
 * @property digits how many it is asked with
 * @property newAsked the shop asks for a new one: what was chosen before holds no more
 */
data class PinOf(val person: String, val name: String, val chosen: Boolean, val digits: Int, val newAsked: Boolean)

/**
 * Who signs, and with whom while the person is learning.
 *
 * @property trainers whom a learner who has named nobody may learn with: one is named before the signature
 */
data class SignedBy(val own: PinOf, val trainer: PinOf?, val trainers: List<PersonHere> = emptyList())

/** Who signs, as this phone knows them now. */
fun Reader.signedBy(signer: Signer): SignedBy {
    fun name(id: String) = fleet.people.firstOrNull { it.id == id }?.name.orEmpty()
    fun pinOf(id: String) = PinOf(id, name(id), phone.pinChosen(id), pinDigits().toInt(), phone.newPinAsked(id))
    val learner = fleet.people.firstOrNull { it.id == signer.person && it.learning }
    val trainer = signer.trainer
    return SignedBy(
        own = pinOf(signer.person),
        trainer = trainer?.let(::pinOf),
        trainers = if (learner != null && trainer == null) trainersOf(fleet.people) else emptyList(),
    )
}

/**
 * A signature as it is being given: the PIN typed so far, the first of two when one is chosen, and why the last one was not
 * taken. Whoever is learning gives his own first, then the trainer gives another: each has tries of his own. The PIN itself
 * is looked at by the core, and nothing of it is kept here.
 */
@Stable
class Signing(val signer: Signer, private val what: String, private val act: Act, private val sign: Reader.(Signed) -> Unit, private val then: () -> Unit) {
    /** Digits typed. */
    var typed by mutableStateOf("")
        private set

    /** The first time a new PIN was typed; none while none is being chosen. */
    private var first by mutableStateOf<String?>(null)

    /** Whether the learner's own was given; none while it is still asked. */
    private var own by mutableStateOf<Boolean?>(null)

    /** Why the last PIN was not taken. */
    var wrong by mutableStateOf<String?>(null)
        private set

    /** A PIN is typed a second time, to be sure of it. */
    val again: Boolean get() = first != null

    /** The PIN asked now is the last one: with it, it is signed. */
    val last: Boolean get() = signer.trainer == null || own != null

    /** Whose PIN is asked now. */
    fun asked(by: SignedBy): PinOf = by.trainer?.takeIf { own != null } ?: by.own

    /** One digit more, of so many. */
    fun digit(one: Int, of: Int) {
        if (typed.length < of) typed += one
        wrong = null
    }

    /** The last digit back. */
    fun erase() {
        typed = typed.dropLast(1)
    }

    /** Goes on without the PIN that is asked, and the record says that it was not given. */
    fun without() {
        val signed = signed(given = false)
        if (last) act.now({ sign(signed) }) { then() } else passed(given = false)
    }

    /** Signs with the PIN typed, or goes on: to choosing one, to the trainer's. */
    fun give(of: PinOf) {
        val pin = typed
        typed = ""
        val before = first
        when {
            of.chosen -> act.now({ given(of, pin) }, ::goOn)
            before == null -> first = pin
            before == pin -> act.now({ choose(of, pin) }, ::goOn)
            else -> {
                first = null
                wrong = NOT_THE_SAME
            }
        }
    }

    private fun goOn(why: String?) {
        val done = last
        wrong = why
        first = null
        if (why == null && done) then()
        if (why == null && !done) passed(given = true)
    }

    private fun passed(given: Boolean) {
        own = given
        typed = ""
        first = null
        wrong = null
    }

    /** What the signature says with the PIN that is asked now given, or not. */
    private fun signed(given: Boolean): Signed {
        val mine = own
        return if (mine == null) Signed(pinGiven = given, trainer = signer.trainer)
        else Signed(pinGiven = mine, trainer = signer.trainer, trainerPinGiven = given)
    }

    private fun Reader.right(): String? {
        if (last) sign(signed(given = true))
        return null
    }

    /** Null when it was right; else why not, in words. */
    private fun Reader.given(of: PinOf, pin: String): String? = when (val said = phone.givePin(of.person, pin)) {
        PinSaid.Right -> right()
        is PinSaid.Wrong ->
            if (said.waitS > 0) words("error-wrong-pin", "name" to of.name, "what" to what, "seconds" to said.waitS)
            else words("error-wrong-pin-again", "name" to of.name, "what" to what)
        is PinSaid.Wait -> words("error-pin-wait", "seconds" to said.waitS)
        PinSaid.NotChosen -> NOT_THE_SAME
    }

    private fun Reader.choose(of: PinOf, pin: String): String? = when (val said = phone.choosePin(of.person, pin, null)) {
        PinChosen.Kept -> right()
        is PinChosen.Not -> words(said.textKey)
    }

    companion object {
        /** The two did not agree: said by the shell's own words. */
        const val NOT_THE_SAME = ""
    }
}
