package app.sumpbook.ui.screen

import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.Figure
import app.sumpbook.core.RunningNumbers
import app.sumpbook.core.Said
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.words.LocalOwnWay
import app.sumpbook.ui.words.figure

/** What can be read while the air runs, each in its own unit. */
private enum class Read(val words: Int, private val us: String, private val metric: String) {
    MINUTES(R.string.running_minutes, "min", "min"),
    PRESSURE(R.string.running_pressure, "psi", "kPa"),
    IDLE(R.string.running_idle, "psi", "kPa"),
    AIR_END(R.string.running_air_end, "degF", "degC"),
    AMBIENT(R.string.running_ambient, "degF", "degC"),
    ;

    /** The unit it is read in by whoever reads so. */
    fun unit(metric: Boolean): String = if (metric) this.metric else us
}

/** Figures read while the air runs: none is asked for, one keypad at a time. */
@Composable
fun Running(unit: String, signer: Signer) {
    val back = LocalBackStack.current
    val act = rememberAct()
    val entry = rememberEntryId()
    // The digits of each, in the order above.
    var typed by rememberSaveable { mutableStateOf(Read.entries.map { "" }) }
    var open by rememberSaveable { mutableStateOf<Read?>(null) }
    val shown by seen(unit) { fleet.units.firstOrNull { it.id == unit }?.door.orEmpty() }
    val door = (shown as? Told.Got)?.it.orEmpty()
    val metric = LocalOwnWay.current.metric
    fun digits(of: Read) = typed[of.ordinal]
    fun read(of: Read): Figure? = typedFigure(Offered(of.unit(metric), 0), digits(of))
    ScreenFrame(
        header = { DoorHeader(door, stringResource(R.string.running)) { back.back() } },
        strips = { act.refused?.let { Strip(sentence(it), heavy = true) } },
        main = {
            val none = Read.entries.all { digits(it).isEmpty() }
            MainPress(stringResource(R.string.running_keep), if (none) stringResource(R.string.figure_first) else null) {
                val numbers = RunningNumbers(
                    minutes = digits(Read.MINUTES).toUIntOrNull(), pressure = read(Read.PRESSURE), idlePressure = read(Read.IDLE),
                    airEnd = read(Read.AIR_END), ambient = read(Read.AMBIENT),
                )
                act.now({ phone.keepRunningNumbers(Said(unit = unit, person = signer.person, id = entry, trainer = signer.trainer), numbers) }) { back.back() }
            }
        },
    ) {
        Read.entries.forEach { one ->
            Line(stringResource(one.words), said = read(one)?.let(::figure)) { open = if (open == one) null else one }
            if (open == one) FigureKeys(Offered(one.unit(metric), 0), digits(one)) { now -> typed = typed.mapIndexed { at, before -> if (at == one.ordinal) now else before } }
        }
    }
}
