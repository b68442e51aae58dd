package app.sumpbook.exchange

import android.app.job.JobParameters
import android.app.job.JobService
import app.sumpbook.SumpbookApp
import app.sumpbook.core.PhoneException
import java.util.concurrent.Executors

/**
 * Exchanges with the hub when the system finds a connection, with no window open. Whatever ends it, the system or the
 * signal, nothing is lost or doubled: the next one goes on.
 */
class ExchangeJob : JobService() {
    override fun onStartJob(params: JobParameters): Boolean {
        val app = application as SumpbookApp
        underWay = true
        ONE.execute {
            try {
                app.book.phone()?.exchangeOnce(AT_MOST_MS)
            } catch (_: PhoneException) {
                // The core has noted the failure and says below when to try again; the Where screen tells people.
            } catch (_: LinkageError) {
                // The app and its core are of two versions: the window says so.
            } finally {
                jobFinished(params, false)
                underWay = false
            }
            planExchange(app, REST_MS)
            app.tellNotices()
        }
        return true
    }

    /** The connection went, or the time is over: again when there is one. */
    override fun onStopJob(params: JobParameters): Boolean = true

    companion object {
        /** The job runs: planning it now would end it. It plans itself anew when it is over. */
        @Volatile
        var underWay = false
            private set

        /** The system gives a job ten minutes. */
        private val AT_MOST_MS = 8u * 60u * 1000u

        /** What the shop did not take stays here: it is not offered again and again. */
        private const val REST_MS = 60_000L

        /** One at a time, and it outlives the service. */
        private val ONE = Executors.newSingleThreadExecutor { Thread(it, "exchange").apply { isDaemon = true } }
    }
}
