package app.sumpbook.notice

import android.app.Notification
import android.app.NotificationChannel
import android.app.NotificationManager
import android.app.PendingIntent
import android.content.Context
import android.content.Intent
import app.sumpbook.MainActivity
import app.sumpbook.R

/** Shows notices, each once: what was told already is not told again until something of it changes. */
class Notices(private val context: Context) {
    private val manager = context.getSystemService(NotificationManager::class.java)!!
    private val told = context.getSharedPreferences("notices", Context.MODE_PRIVATE)

    /** Makes these the notices that stand: new ones are shown, those that no longer hold are taken away. */
    fun show(notices: List<Notice>) {
        channels()
        val stand = notices.associateBy { key(it) }
        val before = told.all
        for (gone in before.keys - stand.keys) manager.cancel(gone, 0)
        val now = told.edit().clear()
        for ((key, notice) in stand) {
            if (before[key] != notice.fingerprint) manager.notify(key, 0, notification(notice))
            now.putString(key, notice.fingerprint)
        }
        now.apply()
    }

    private fun key(notice: Notice) = "${notice.about}:${notice.unit}"

    private fun channels() {
        val lock = NotificationChannel(About.LOCK.name, context.getString(R.string.notices_of_locks), NotificationManager.IMPORTANCE_HIGH)
        val service = NotificationChannel(About.SERVICE.name, context.getString(R.string.notices_of_services), NotificationManager.IMPORTANCE_DEFAULT)
        manager.createNotificationChannels(listOf(lock, service))
    }

    private fun notification(notice: Notice): Notification {
        val title = when (notice.about) {
            About.LOCK -> context.getString(R.string.notice_locked, notice.door)
            About.SERVICE -> context.getString(R.string.notice_due, notice.door)
        }
        val open = Intent(context, MainActivity::class.java).setAction(OPEN_UNIT).putExtra(UNIT, notice.unit)
        val tap = PendingIntent.getActivity(context, key(notice).hashCode(), open, PendingIntent.FLAG_IMMUTABLE or PendingIntent.FLAG_UPDATE_CURRENT)
        return Notification.Builder(context, notice.about.name)
            .setSmallIcon(R.drawable.app_mark_notice)
            .setContentTitle(title)
            .setContentText(notice.lines.first())
            .setStyle(Notification.BigTextStyle().bigText(notice.lines.joinToString("\n")))
            .setCategory(if (notice.about == About.LOCK) Notification.CATEGORY_STATUS else Notification.CATEGORY_REMINDER)
            .setContentIntent(tap)
            .setAutoCancel(true)
            .build()
    }

    companion object {
        /** The window opens at a unit. */
        const val OPEN_UNIT = "app.sumpbook.OPEN_UNIT"

        /** Which. */
        const val UNIT = "unit"
    }
}
