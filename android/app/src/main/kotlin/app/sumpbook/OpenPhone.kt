package app.sumpbook

import app.sumpbook.core.EnrolmentKind
import app.sumpbook.core.KeyKeeper
import app.sumpbook.core.Phone
import app.sumpbook.core.PhoneException
import app.sumpbook.core.uniffiEnsureInitialized
import java.io.File

/**
 * The one open book of this process, for the window and for the exchange alike: whichever needs it first opens it, and
 * it stays open until the process ends. Blocks: not for the thread that draws.
 */
class OpenPhone(private val folder: File, private val keeper: KeyKeeper) {
    private var open: Phone? = null

    /** The phone; none while it is not set up. Throws [PhoneException] when it is and cannot be opened. */
    @Synchronized
    fun phone(): Phone? {
        open?.let { return it }
        uniffiEnsureInitialized()
        return try {
            Phone.open(folder.path, keeper, null).also { open = it }
        } catch (why: PhoneException.Enrolment) {
            if (why.kind == EnrolmentKind.NOT_ENROLLED) null else throw why
        }
    }

    /** Sets it up, with whatever the shop gave. Throws [PhoneException]. */
    @Synchronized
    fun enrol(with: (folder: String, keeper: KeyKeeper) -> Phone): Phone {
        uniffiEnsureInitialized()
        return with(folder.path, keeper).also { open = it }
    }

    /** Lets go of it. */
    @Synchronized
    fun close() {
        open?.shutdown()
        open = null
    }
}
