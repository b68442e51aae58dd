package app.sumpbook.ui.screen

import androidx.compose.runtime.Composable
import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.PreTripNow
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Reader

/** A walk of this person's that is under way. */
data class WalkLeft(val unit: String, val door: String, val stop: String)

/** The walk this person would leave for another unit; none is under way: nothing is asked. */
fun Reader.walkLeft(person: String): WalkLeft? {
    val row = phone.today(person).units.firstOrNull { it.mine && it.preTrip is PreTripNow.UnderWay } ?: return null
    val walk = row.preTrip as? PreTripNow.UnderWay
    return WalkLeft(row.id, row.door, walk?.at?.toString() ?: walk?.stop ?: "1")
}

/** Leaving one unit for another is asked once: the first press asks, the second goes. */
@Stable
class Leaving {
    /** The unit that was pressed and asked about. */
    var asked by mutableStateOf<String?>(null)
        private set

    /** Goes to a unit, or asks first. */
    fun to(unit: String, left: WalkLeft?, go: () -> Unit) {
        if (left == null || left.unit == unit || asked == unit) go() else asked = unit
    }
}

/** What is asked on this screen. */
@Composable
fun rememberLeaving(): Leaving = remember { Leaving() }

/** The question, once it is asked. */
@Composable
fun LeavingStrip(leaving: Leaving, left: WalkLeft?) {
    if (left != null && leaving.asked != null) Strip(stringResource(R.string.leaving_unit, left.door, left.stop), heavy = true)
}
