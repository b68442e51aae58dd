package app.sumpbook.notice

import android.app.job.JobInfo
import android.app.job.JobParameters
import android.app.job.JobScheduler
import android.app.job.JobService
import android.content.ComponentName
import android.content.Context
import app.sumpbook.SumpbookApp
import java.util.concurrent.Executors

/** Looks twice a day, with or without a connection: a day that turns makes a service due and nobody writes anything. */
class NoticeJob : JobService() {
    override fun onStartJob(params: JobParameters): Boolean {
        val app = application as SumpbookApp
        ONE.execute {
            app.tellNotices()
            jobFinished(params, false)
        }
        return true
    }

    override fun onStopJob(params: JobParameters): Boolean = true

    companion object {
        private const val NUMBER = 2
        private const val EVERY_MS = 12L * 60 * 60 * 1000
        private val ONE = Executors.newSingleThreadExecutor { Thread(it, "notices").apply { isDaemon = true } }

        /** Plans it, once for all. */
        fun plan(context: Context) {
            val scheduler = context.getSystemService(JobScheduler::class.java)!!
            if (scheduler.getPendingJob(NUMBER) != null) return
            val job = JobInfo.Builder(NUMBER, ComponentName(context, NoticeJob::class.java)).setPeriodic(EVERY_MS).setPersisted(true).build()
            scheduler.schedule(job)
        }
    }
}
