package app.sumpbook.hand

import android.content.Context
import android.content.Intent
import android.media.AudioManager
import android.media.ToneGenerator
import android.net.Uri
import android.os.Handler
import android.os.Looper
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
        tone()
    }

    /** A tone beside it, as loud as the telephone's notices are set: the telephone may lie on the running board. */
    private fun tone() {
        // A telephone whose sound is taken by another app has no tone to give: the buzz and the ring have told it.
        val tone = runCatching { ToneGenerator(AudioManager.STREAM_NOTIFICATION, ToneGenerator.MAX_VOLUME) }.getOrNull() ?: return
        tone.startTone(ToneGenerator.TONE_PROP_BEEP2, TONE_MS)
        Handler(Looper.getMainLooper()).postDelayed(tone::release, 2L * TONE_MS)
    }

    override fun call(number: String) {
        val dial = Intent(Intent.ACTION_DIAL, Uri.fromParts("tel", number, null)).addFlags(Intent.FLAG_ACTIVITY_NEW_TASK)
        if (dial.resolveActivity(context.packageManager) != null) context.startActivity(dial)
    }

    private companion object {
        const val TONE_MS = 600
    }
}
