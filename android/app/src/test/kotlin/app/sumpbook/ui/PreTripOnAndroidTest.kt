package app.sumpbook.ui

import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner

@RunWith(RobolectricTestRunner::class)
class PreTripOnAndroidTest : PreTrip() {
    /** Android sets lines a hair taller: a stop of eight lines under a strip of two ends a pixel below the frame. */
    override val turnsAtMost = 1
}
