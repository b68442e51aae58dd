package app.sumpbook.ui.desktop

import app.sumpbook.ui.desk.Handset
import java.awt.GraphicsEnvironment
import java.awt.Toolkit

/** A desk computer in place of a telephone: it has a clock and a beep; it cannot call. */
class DesktopHandset(private val beeps: () -> Boolean = { true }) : Handset {
    override fun ticks(): Long = System.nanoTime() / 1_000_000

    override fun now(): Long = System.currentTimeMillis()

    override fun buzz() {
        if (beeps() && !GraphicsEnvironment.isHeadless()) Toolkit.getDefaultToolkit().beep()
    }

    override fun call(number: String) = Unit
}
