package app.sumpbook

import android.app.Application
import app.sumpbook.core.EnrolmentKind
import app.sumpbook.core.Phone
import app.sumpbook.core.PhoneException
import app.sumpbook.exchange.planExchange
import app.sumpbook.hand.AppLanguage
import app.sumpbook.hand.KeptSettings
import app.sumpbook.hand.PhoneHandset
import app.sumpbook.key.KeystoreKeeper
import app.sumpbook.key.KeystoreSealer
import app.sumpbook.key.Sealer
import app.sumpbook.notice.NoticeJob
import app.sumpbook.notice.Notices
import app.sumpbook.notice.whatToTell
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.Home
import app.sumpbook.ui.desk.HomeNow
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.homeFrom
import app.sumpbook.ui.words.OwnWay
import java.io.File
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.SupervisorJob
import kotlinx.coroutines.launch

/** The process: what outlives every window. */
open class SumpbookApp : Application() {
    private val scope = CoroutineScope(SupervisorJob() + Dispatchers.IO)
    private var desk: Desk? = null

    @Volatile
    private var noticesHeld = false

    /** The one open book. */
    val book: OpenPhone by lazy {
        // Where no backup reaches: the book is the shop's as well, and its key stays on this device.
        val folder = File(noBackupFilesDir, "book")
        OpenPhone(folder, KeystoreKeeper(File(noBackupFilesDir, "device.key"), sealer()))
    }

    /** How this phone is set. */
    val settings: KeptSettings by lazy { KeptSettings(this) }

    /** What closes the phone's key. */
    protected open fun sealer(): Sealer = KeystoreSealer(this)

    /** The book for windows: the same one for each, since a window is made anew when the telephone is turned. */
    val home: Home = object : Home {
        override suspend fun open(): HomeNow = on { book.phone() ?: throw notSetUp() }

        override suspend fun add(code: String, name: String): HomeNow =
            on { book.enrol { folder, keeper -> Phone.enrolByCode(folder, code, name, keeper, null) } }

        private suspend fun on(phone: () -> Phone) = homeFrom { deskOver(phone()) }
    }

    private fun notSetUp() = PhoneException.Enrolment(EnrolmentKind.NOT_ENROLLED, null, null, null, "no phone was set up here")

    @Synchronized
    private fun deskOver(phone: Phone): Desk = desk ?: Desk(phone, PhoneHandset(this) { settings.now.value.buzz }).also { made ->
        desk = made
        NoticeJob.plan(this)
        // What was recorded goes by itself: every change may have left something to send.
        scope.launch { made.changes.collect { planExchange(this@SumpbookApp) } }
    }

    /** While somebody else reads the officer's page nothing of ours comes up over it; what came meanwhile is told after it. */
    fun holdNotices(hold: Boolean) {
        noticesHeld = hold
        if (!hold) scope.launch { tellNotices() }
    }

    /** Shows what is to be told of locks and services. Blocks. */
    fun tellNotices() {
        if (noticesHeld) return
        try {
            val phone = book.phone() ?: return
            val way = OwnWay(AppLanguage.of(this))
            Notices(AppLanguage.wrap(this)).show(Reader(phone, phone.fleet(), way, System.currentTimeMillis()).whatToTell())
        } catch (_: PhoneException) {
            // The book cannot be read now: the window says why when it is opened.
        } catch (_: LinkageError) {
            // The app and its core are of two versions: the window says so.
        }
    }
}
