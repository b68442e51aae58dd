package app.sumpbook.ui.place

import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateListOf
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.Saver
import androidx.compose.runtime.setValue
import androidx.compose.runtime.staticCompositionLocalOf

/** Who signs: a person's id, and the trainer's while the person is learning. */
data class Signer(val person: String, val trainer: String? = null)

/** Where one is, the way back, and whose name stands under what is recorded. */
@Stable
class BackStack(first: Place = Place.WhoSigns(), signer: Signer? = null) {
    private val stack = mutableStateListOf(first)

    /** Who signs; none before a name was chosen. */
    var signer by mutableStateOf(signer)
        private set

    /** Since when that name stands on this phone (RFC 3339); none where it is not known. */
    var since by mutableStateOf<String?>(null)
        private set

    /** The stop at which the app was closed without being asked; none, or once one has gone on. */
    var closedAt by mutableStateOf<String?>(null)

    /** What was done just now, to be read on the next screen; gone once one goes on. */
    var said by mutableStateOf<String?>(null)

    /** Where one is. */
    val top: Place get() = stack.last()

    /** There is a way back. */
    val canGoBack: Boolean get() = stack.size > 1

    /** Goes to a place. */
    fun go(to: Place) {
        said = null
        closedAt = null
        stack.add(to)
    }

    /** Goes to a place instead of this one: no way back here. */
    fun goInstead(to: Place) {
        stack[stack.lastIndex] = to
    }

    /** Goes back one; nothing that was answered is lost by it. */
    fun back() {
        if (canGoBack) stack.removeAt(stack.lastIndex)
    }

    /** A name was chosen, [at] this moment: the day begins. */
    fun signsNow(who: Signer, at: String) {
        signer = who
        since = at
        said = null
        begin(Place.Today())
    }

    /** Nobody signs any more: the next one says who. What was done last is still read. */
    fun nobody() {
        signer = null
        since = null
        begin(Place.WhoSigns())
    }

    /** Back to today. */
    fun today() = begin(Place.Today())

    /** To a unit, with today behind it. */
    fun unit(unit: String) {
        begin(Place.Today())
        go(Place.Unit(unit))
    }

    private fun begin(at: Place) {
        stack.clear()
        stack.add(at)
    }

    private fun lines(): ArrayList<String> =
        ArrayList(listOf(signer?.person.orEmpty(), signer?.trainer.orEmpty(), since.orEmpty()) + stack.map { it.line() })

    companion object {
        /** Written as lines, so that a system that ends the app in the background gives them back. */
        val Saver = Saver<BackStack, ArrayList<String>>(save = { it.lines() }, restore = { ofLines(it) })

        private fun ofLines(lines: List<String>): BackStack? {
            val places = lines.drop(3).map { Place.of(it) ?: return null }
            val first = places.firstOrNull() ?: return null
            val person = lines[0].ifEmpty { null }
            val back = BackStack(first, person?.let { Signer(it, lines[1].ifEmpty { null }) })
            back.since = lines[2].ifEmpty { null }
            places.drop(1).forEach(back::go)
            return back
        }
    }
}

/** The way one goes. */
val LocalBackStack = staticCompositionLocalOf<BackStack> { error("no way: provide LocalBackStack") }
