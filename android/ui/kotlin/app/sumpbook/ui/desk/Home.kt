package app.sumpbook.ui.desk

import app.sumpbook.core.EnrolmentKind
import app.sumpbook.core.KeyKeeper
import app.sumpbook.core.Phone
import app.sumpbook.core.PhoneClock
import app.sumpbook.core.PhoneException
import app.sumpbook.core.uniffiEnsureInitialized
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.withContext

/** How the folder of this phone stands. */
sealed interface HomeNow {
    /** Nobody has looked yet. */
    data object Unread : HomeNow

    /** The shop does not know this phone: it is to be added. */
    data object New : HomeNow

    /** It cannot be opened. */
    data class Shut(val why: Refusal) : HomeNow

    /** The app and the core that came with it are of two versions: nothing was opened. */
    data object Unfit : HomeNow

    /** It is open. */
    data class Open(val desk: Desk) : HomeNow
}

/** The phone's folder: opened, or set up once. A process that does more than show it has one of its own. */
interface Home {
    /** Opens it. */
    suspend fun open(): HomeNow

    /** Sets it up from the shop's code. Its books come once the shop has let it in. */
    suspend fun add(code: String, name: String): HomeNow
}

/**
 * A folder that is opened for whoever shows it.
 *
 * @param keeper where the phone's key is kept; none: in a file beside the book
 * @param clock a clock of a test's or a demonstration's; none: the machine's
 */
fun Home(folder: String, keeper: KeyKeeper?, clock: PhoneClock?, handset: Handset): Home = FolderHome(folder, keeper, clock, handset)

/** The same by its own name. */
class FolderHome(private val folder: String, private val keeper: KeyKeeper?, private val clock: PhoneClock?, private val handset: Handset) : Home {
    override suspend fun open(): HomeNow = homeFrom { Desk(Phone.open(folder, keeper, clock), handset) }

    override suspend fun add(code: String, name: String): HomeNow = homeFrom { Desk(Phone.enrolByCode(folder, code, name, keeper, clock), handset) }
}

/** How a folder stands after it was tried, off the drawing thread. */
suspend fun homeFrom(open: () -> Desk): HomeNow = withContext(Dispatchers.IO) {
    try {
        when (val tried = told { uniffiEnsureInitialized().let { open() } }) {
            is Told.Got -> HomeNow.Open(tried.it)
            is Told.Refused -> if (isNew(tried.why.why)) HomeNow.New else HomeNow.Shut(tried.why)
        }
    } catch (_: LinkageError) {
        // The bindings compare themselves with the library when they are first used.
        HomeNow.Unfit
    }
}

private fun isNew(why: PhoneException) = why is PhoneException.Enrolment && why.kind == EnrolmentKind.NOT_ENROLLED
