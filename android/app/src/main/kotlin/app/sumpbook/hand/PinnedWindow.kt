package app.sumpbook.hand

import android.app.Activity
import android.app.ActivityManager
import app.sumpbook.ui.desk.Held

/**
 * Holds the telephone at the one window with the system's own pinning. The system asks the person first, unless the
 * telephone's owner allowed it beforehand; while it holds, other apps' notices are not seen, and [quiet] holds our own.
 */
class PinnedWindow(private val window: Activity, private val quiet: (Boolean) -> Unit) : Held {
    override fun hold() {
        quiet(true)
        // A telephone that is set to allow no pinning says no by an exception of its own choice.
        runCatching { window.startLockTask() }
    }

    override fun isHeld(): Boolean =
        window.getSystemService(ActivityManager::class.java)?.lockTaskModeState.let { it != null && it != ActivityManager.LOCK_TASK_MODE_NONE }

    override fun letGo() {
        if (isHeld()) runCatching { window.stopLockTask() }
        quiet(false)
    }
}
