package app.sumpbook.ui

import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner

@RunWith(RobolectricTestRunner::class)
class DayOnAndroidTest : Day()
