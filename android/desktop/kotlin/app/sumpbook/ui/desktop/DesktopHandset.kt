package app.sumpbook.ui.desktop

import app.sumpbook.ui.desk.Handset

/** A desk computer in place of a telephone: it has a clock; it can neither buzz nor call. */
class DesktopHandset : Handset {
    override fun ticks(): Long = System.nanoTime() / 1_000_000

    override fun now(): Long = System.currentTimeMillis()

    override fun buzz() = Unit

    override fun call(number: String) = Unit
}
