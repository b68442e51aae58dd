package app.sumpbook

import android.app.Application

/** The process: what outlives every screen. */
class SumpbookApp : Application()
