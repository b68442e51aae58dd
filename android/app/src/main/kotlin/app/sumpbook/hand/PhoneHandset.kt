package app.sumpbook.hand

import android.content.Context
import android.content.Intent
import android.net.Uri
import android.os.SystemClock
import android.os.VibrationEffect
import android.os.Vibrator
import app.sumpbook.ui.desk.Handset

/** The telephone in the hand; [buzzes] is asked each time. */
class PhoneHandset(private val context: Context, private val buzzes: () -> Boolean) : Handset {
    override fun ticks(): Long = SystemClock.elapsedRealtime()

    override fun now(): Long = System.currentTimeMillis()

    override fun buzz() {
        if (!buzzes()) return
        // Felt through a glove: two, as long as the pause between them.
        context.getSystemService(Vibrator::class.java)?.vibrate(VibrationEffect.createWaveform(longArrayOf(0, 350, 250, 350), -1))
    }

    override fun call(number: String) {
        val dial = Intent(Intent.ACTION_DIAL, Uri.fromParts("tel", number, null)).addFlags(Intent.FLAG_ACTIVITY_NEW_TASK)
        if (dial.resolveActivity(context.packageManager) != null) context.startActivity(dial)
    }
}
