package app.sumpbook.exchange

import android.app.job.JobInfo
import android.app.job.JobScheduler
import android.content.ComponentName
import android.content.Context
import android.net.NetworkCapabilities
import android.net.NetworkRequest
import android.os.Build
import app.sumpbook.SumpbookApp
import app.sumpbook.core.PhoneException
import app.sumpbook.core.TryWhen

/** The number of the exchange among this app's jobs. */
const val EXCHANGE_JOB = 1

/** Has the system exchange when the core wishes to and there is a connection. Blocks a moment; any thread but the drawing one. */
fun planExchange(app: SumpbookApp) {
    if (ExchangeJob.underWay) return
    val wish = try {
        app.book.phone()?.wish() ?: return
    } catch (_: PhoneException) {
        // The book cannot be read now; the window says why. Perhaps it can in a while.
        TryWhen.NotBefore(System.currentTimeMillis() + WHEN_UNKNOWN_MS)
    }
    scheduler(app).schedule(exchangeJob(app, wish, System.currentTimeMillis()))
}

/** The job for a wish, as of `now` in milliseconds since 1970. */
fun exchangeJob(context: Context, wish: TryWhen, now: Long): JobInfo {
    val wait = when (wish) {
        TryWhen.Now -> 0L
        is TryWhen.NotBefore -> (wish.v1 - now).coerceIn(0, LONGEST_MS)
    }
    val job = JobInfo.Builder(EXCHANGE_JOB, ComponentName(context, ExchangeJob::class.java))
        .setMinimumLatency(wait)
        .setBackoffCriteria(JobInfo.DEFAULT_INITIAL_BACKOFF_MILLIS, JobInfo.BACKOFF_POLICY_EXPONENTIAL)
        .setPersisted(true)
    // A yard's own network may lead to the hub and nowhere else. "Any network" would ask for one that reaches the
    // internet; this request names no such capability. A tunnel of the shop's is welcome.
    if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.P) {
        job.setRequiredNetwork(NetworkRequest.Builder().removeCapability(NetworkCapabilities.NET_CAPABILITY_NOT_VPN).build())
    } else {
        job.setRequiredNetworkType(JobInfo.NETWORK_TYPE_ANY)
    }
    return job.build()
}

private fun scheduler(context: Context): JobScheduler = context.getSystemService(JobScheduler::class.java)!!

/** A clock that was set wrong may not put the next try a year off. */
private const val LONGEST_MS = 6L * 60 * 60 * 1000
private const val WHEN_UNKNOWN_MS = 60L * 60 * 1000
