package app.sumpbook.ui.screen

import app.sumpbook.core.UnitHere
import app.sumpbook.ui.desk.Reader

/** One step of starting or stopping air, with its words. */
data class AirStep(
    val id: String,
    val name: String,
    val ok: String,
    val stops: String,
    val caution: String?,
    /** Words for what is not so. */
    val notSo: List<String>,
    /** Outlets the step says by their names. */
    val outlets: List<String>,
)

/** A step as it is listed: its id, the words for what is not so, the features it needs one of, its caution. */
private class Listed(val id: String, val notSo: List<String>, val caution: String? = null, val needs: List<String> = emptyList(), val names: Boolean = false)

/** The steps of starting or stopping air that this unit has, in their order. */
fun Reader.airSteps(unit: UnitHere, start: Boolean): List<AirStep> =
    (if (start) START else STOP)
        .filter { step -> step.needs.isEmpty() || step.needs.any { it in unit.features } }
        .map { step ->
            AirStep(
                id = step.id,
                name = words("step-${step.id}"),
                ok = words("step-${step.id}.ok"),
                stops = words("step-${step.id}.stops"),
                caution = step.caution?.let { words("caution-$it") },
                notSo = step.notSo.map { words("not-so-$it") },
                outlets = if (step.names) unit.outlets else emptyList(),
            )
        }

// The steps stand in core/trade/data/procedures.toml. The core's face to a shell does not give them yet; until it does
// they are listed here in the same order, and these two lists go when it does.
private val START = listOf(
    Listed("preheat-out", listOf("stays-on"), "starting-fluid", listOf("glow-plugs", "intake-heater")),
    Listed("engine-run", listOf("rough", "low-oil-pressure")),
    Listed("valves-closed", listOf("valve-open"), names = true),
    Listed("sel-low", listOf("stuck"), needs = listOf("two-pressure")),
    Listed("display-checks", listOf("fault", "reminder")),
    Listed("pto-in", listOf("grinds"), "pto-in"),
    Listed("rise-watch", listOf("passes-set", "valve-lifts", "no-rise")),
    Listed("look-listen", listOf("leaking", "noise", "smell"), "not-by-hand"),
    Listed("first-numbers", listOf("over-profile"), needs = listOf("temp-shown")),
    Listed("sel-high", emptyList(), needs = listOf("two-pressure")),
)

private val STOP = listOf(
    Listed("sel-low-stop", listOf("stuck"), needs = listOf("two-pressure")),
    Listed("tools-off", emptyList()),
    Listed("valves-shut", listOf("valve-open"), names = true),
    Listed("idle-cool", emptyList()),
    Listed("stop-button", listOf("stays-on"), "pto-driving"),
    Listed("blow-down", listOf("holds-pressure"), "zero-two-signs"),
)

/** From this step on the compressor turns, or stands: what was done before it is not yet a start, or a stop. */
fun turningPoint(start: Boolean): String = if (start) "pto-in" else "stop-button"
