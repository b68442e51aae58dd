package app.sumpbook.ui.desk

import app.sumpbook.core.EnrolmentKind
import app.sumpbook.core.KeyKeeper
import app.sumpbook.core.Phone
import app.sumpbook.core.PhoneClock
import app.sumpbook.core.PhoneException
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.withContext

/** How the folder of this phone stands. */
sealed interface HomeNow {
    /** Nobody has looked yet. */
    data object Unread : HomeNow

    /** The shop does not know this phone: it is to be added. */
    data object New : HomeNow

    /** It cannot be opened. */
    data class Shut(val why: PhoneException) : HomeNow

    /** It is open. */
    data class Open(val desk: Desk) : HomeNow
}

/**
 * The folder of this phone: opened, or set up once.
 *
 * @param keeper where the phone's key is kept; none: in a file beside the book
 * @param clock a clock of a test's or a demonstration's; none: the machine's
 */
class Home(private val folder: String, private val keeper: KeyKeeper?, private val clock: PhoneClock?, private val handset: Handset) {
    /** Opens it. */
    suspend fun open(): HomeNow = withContext(Dispatchers.IO) {
        when (val told = told { Phone.open(folder, keeper, clock) }) {
            is Told.Got -> HomeNow.Open(Desk(told.it, handset))
            is Told.Refused -> if (isNew(told.why)) HomeNow.New else HomeNow.Shut(told.why)
        }
    }

    /** Sets it up from the shop's code. Its books come once the shop has let it in. */
    suspend fun add(code: String, name: String): HomeNow = withContext(Dispatchers.IO) {
        when (val told = told { Phone.enrolByCode(folder, code, name, keeper, clock) }) {
            is Told.Got -> HomeNow.Open(Desk(told.it, handset))
            is Told.Refused -> HomeNow.Shut(told.why)
        }
    }

    private fun isNew(why: PhoneException) = why is PhoneException.Enrolment && why.kind == EnrolmentKind.NOT_ENROLLED
}
