package app.sumpbook.exchange

import android.app.job.JobInfo
import android.app.job.JobScheduler
import android.content.ComponentName
import android.content.Context
import android.net.NetworkCapabilities.NET_CAPABILITY_NOT_VPN
import android.net.NetworkRequest
import android.os.Build
import app.sumpbook.SumpbookApp
import app.sumpbook.core.PhoneException
import app.sumpbook.core.TryWhen

/** The number of the exchange among this app's jobs. */
const val EXCHANGE_JOB = 1

/**
 * Has the system exchange when the core wishes to and there is a connection. With nothing to send the shop is asked for
 * its news now and then. Blocks a moment; any thread but the drawing one.
 *
 * @param rest milliseconds that pass at the least
 */
fun planExchange(app: SumpbookApp, rest: Long = 0) {
    if (ExchangeJob.underWay) return
    val now = System.currentTimeMillis()
    val wait = try {
        val phone = app.book.phone() ?: return
        val counts = phone.whereItIs(0u).let { it.counts.onPhone + it.photos.onPhone }
        waitFor(phone.wish(), now, somethingToSend = counts > 0u)
    } catch (_: PhoneException) {
        // The book cannot be read now; the window says why. Perhaps it can in a while.
        NEWS_MS
    } catch (_: LinkageError) {
        // The app and its core are of two versions: only another app helps.
        return
    }
    app.getSystemService(JobScheduler::class.java)!!.schedule(exchangeJob(app, maxOf(wait, rest)))
}

/** How long to wait for what the core wishes, milliseconds, as of `now` in milliseconds since 1970. */
fun waitFor(wish: TryWhen, now: Long, somethingToSend: Boolean): Long = when (wish) {
    TryWhen.Now -> if (somethingToSend) 0 else NEWS_MS
    is TryWhen.NotBefore -> (wish.v1 - now).coerceIn(0, LONGEST_MS)
}

/** The job, to be run on any connection after `wait` milliseconds. */
fun exchangeJob(context: Context, wait: Long): JobInfo {
    val job = JobInfo.Builder(EXCHANGE_JOB, ComponentName(context, ExchangeJob::class.java))
        .setMinimumLatency(wait)
        .setBackoffCriteria(JobInfo.DEFAULT_INITIAL_BACKOFF_MILLIS, JobInfo.BACKOFF_POLICY_EXPONENTIAL)
        .setPersisted(true)
    // A yard's own network may lead to the hub and nowhere else. "Any network" would ask for one that reaches the
    // internet; this request names no such capability. A tunnel of the shop's is welcome.
    if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.P) {
        job.setRequiredNetwork(NetworkRequest.Builder().removeCapability(NET_CAPABILITY_NOT_VPN).build())
    } else {
        job.setRequiredNetworkType(JobInfo.NETWORK_TYPE_ANY)
    }
    return job.build()
}

/** A clock that was set wrong may not put the next try a year off. */
private const val LONGEST_MS = 6L * 60 * 60 * 1000

/** A lock that another wrote should be known here within the half hour. */
private const val NEWS_MS = 30L * 60 * 1000
