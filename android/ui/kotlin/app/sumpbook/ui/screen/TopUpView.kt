package app.sumpbook.ui.screen

import app.sumpbook.core.Fluid
import app.sumpbook.core.MainAct
import app.sumpbook.core.MissingSign
import app.sumpbook.core.OilFamily
import app.sumpbook.core.TopUpScreen
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.words.figure
import app.sumpbook.ui.words.volume

/** A top-up under way, with its words. */
data class TopUpView(
    val record: TopUpScreen,
    val fluid: String,
    /** What belongs in the compressor, as its drum has to say; none for another fluid, and where the shop has not said. */
    val own: String?,
    /** What the drum says; none before it was read. */
    val drum: String?,
    val families: List<Pair<OilFamily, String>>,
    val wait: String,
    val cautions: List<String>,
    /** What stands between the two oils, when the drum was read. */
    val mix: String?,
    val locks: String,
    val pours: List<String>,
    val poured: String,
    val level: String?,
    val astray: String?,
    val warmth: OilWarmthWords,
    /** The oil's temperature as it was given. */
    val temperature: String?,
    /** Where the oil goes. */
    val use: List<String>,
    val last: List<String>,
    /** The band of the glass where the level belongs, in percent. */
    val middle: IntRange,
    val main: String,
    val whyNot: String?,
) {
    val isOil: Boolean get() = record.oil != null

    /** A pour is what the button asks for. */
    val wantsPour: Boolean get() = record.main.act is MainAct.AddPour
}

/** A top-up as it stands. */
fun Reader.topUpView(draft: String): TopUpView {
    val record = phone.topUp(draft)
    val oil = record.oil
    return TopUpView(
        record = record,
        fluid = fluidWords(record.fluid),
        own = oil?.let { line -> listOfNotNull(line.family?.let(::familyWords), line.grade).joinToString(" ").ifEmpty { null } },
        drum = record.mix?.let { listOfNotNull(record.drumFamily?.let(::familyWords), record.drumGrade).joinToString(" ").ifEmpty { words("drum-unknown") } },
        families = OilFamily.entries.map { it to familyWords(it) },
        wait = waitWords(record.wait),
        cautions = record.cautions.map { words("caution-$it") },
        mix = record.mix?.let { words("mix-${it.name.lowercase().replace('_', '-')}") },
        locks = words("part-air"),
        pours = record.pours.mapIndexed { n, pour ->
            listOfNotNull("${n + 1}: ${volume(pour.volume, way.metric)}", pour.after?.let(::glass)).joinToString(", ")
        },
        poured = volume(record.pouredMl, way.metric),
        level = record.now?.let { "${glass(it)}, ${levelWords(record.level)}" },
        astray = record.astrayMl?.let {
            words(if (it < 0) "oil-astray-more" else "oil-astray", "volume" to volume(Math.abs(it), way.metric))
        },
        warmth = oilWarmthWords(),
        temperature = record.oilTemperature?.let { figure(it) },
        use = record.oilUse?.let(::oilUseWords).orEmpty(),
        last = record.last.map(::pourWords),
        middle = record.middle.let { it.low.toInt()..it.high.toInt() },
        main = label(record.main, record.door),
        whyNot = record.main.whyNot?.let { why -> record.missing?.let { words("sign-missing-${missing(it)}") } ?: whyNot(why) },
    )
}

/** Says what a camera read of the drum; gives why it is about no drum, when it is not. */
fun Reader.drumScanned(draft: String, text: String): String? =
    phone.scanDrum(draft, text)?.let { words("scan-${it.name.lowercase().replace('_', '-')}") }

/** A fluid's name. */
fun Reader.fluidWords(fluid: Fluid): String = words("fluid-${fluid.name.lowercase().replace('_', '-')}")

private fun missing(sign: MissingSign): String = when (sign) {
    MissingSign.GAUGE_ZERO -> "gauge-zero"
    MissingSign.BLOW_DOWN_SILENT -> "blow-down-silent"
    MissingSign.BOTH -> "both"
}
