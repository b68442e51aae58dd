package app.sumpbook.ui.screen

import app.sumpbook.core.BalanceRow
import app.sumpbook.core.CarryOverRow
import app.sumpbook.core.ChangeRow
import app.sumpbook.core.ChangeWords
import app.sumpbook.core.LabRow
import app.sumpbook.core.OilClass
import app.sumpbook.core.OilUseRow
import app.sumpbook.core.keyOfOilVerdict
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.words.decimal
import app.sumpbook.ui.words.hours
import app.sumpbook.ui.words.volume

/** Where a unit's oil goes, a sentence each: what changed first, then what is known of the fill, then the laboratory's answers. */
fun Reader.oilUseWords(use: OilUseRow): List<String> = listOfNotNull(
    use.change?.let(::changeWords),
    fillWords(use),
    // The newest of its own, for one that settles says nothing of what is usual.
    (use.balances.firstOrNull { !it.settling } ?: use.balances.firstOrNull())?.let(::balanceWords),
    use.usualHundredths?.let { words("oil-usual-rate", "rate" to decimal(it, 2)) },
    verdictWords(use),
    use.carryOver?.let(::carryOverWords),
) + use.lab.map(::labWords)

/** "Using 2.1x its usual since Tue 3 Nov. Look at separator, scavenge line, leaks." */
private fun Reader.changeWords(change: ChangeRow): String {
    val key = when (change.words) {
        ChangeWords.OIL_USE_MORE -> "oil-use-more"
        ChangeWords.OIL_USE_LESS -> "oil-use-less"
    }
    val times = change.timesTenths ?: return words("$key-unknown", "since" to moments.day(change.since))
    return words(key, "times" to decimal(times, 1), "since" to moments.day(change.since))
}

private fun Reader.fillWords(use: OilUseRow): String? {
    val at = use.filled?.let { filled ->
        words("oil-filled-at", "when" to moments.at(filled), "hours" to (use.filledHours?.let(::hours) ?: "?"))
    }
    val poured = if (use.madeUpMl == 0L) null else words("oil-poured-since", "volume" to volume(use.madeUpMl, way.metric))
    val fill = listOfNotNull(at, poured).joinToString(", ").ifEmpty { null }
    return listOfNotNull(fill, if (use.settling) words("oil-settling") else null).joinToString(". ").ifEmpty { null }
}

/** "used 0.12 qt in 94.5 h: about 1.20 mL/h", with its band and what it carries on. */
private fun Reader.balanceWords(balance: BalanceRow): String {
    val span = words("oil-span", "from" to moments.at(balance.from), "to" to moments.at(balance.to))
    val rate = balance.mlPerHourHundredths?.let { decimal(it, 2) }
    val used = words(
        if (rate == null) "oil-used-no-rate" else "oil-used",
        "volume" to volume(balance.usedMl, way.metric), "hours" to hours(balance.hours), "rate" to rate.orEmpty(),
    )
    val between = balance.betweenHundredths?.let { words("oil-used-between", "least" to decimal(it.low, 2), "most" to decimal(it.high, 2)) }
    val carried = if (balance.carriedMl == 0L) null else {
        words(if (balance.carriedMl > 0) "oil-carried-over" else "oil-carried-under", "volume" to volume(Math.abs(balance.carriedMl), way.metric))
    }
    val settling = if (balance.settling) words("oil-settling") else null
    val corrected = if (balance.corrected) words("oil-corrected") else null
    return (listOf("$span: " + listOfNotNull(used, between, carried).joinToString(", ")) + listOfNotNull(settling, corrected)).joinToString(". ")
}

private fun Reader.verdictWords(use: OilUseRow): String? {
    val verdict = use.verdict ?: return null
    return words(keyOfOilVerdict(verdict), "limit" to (use.limitHundredths?.let { decimal(it, 2) } ?: "?"))
}

/** "at least 3.3 mg/m3 of oil in the air, ISO 8573-1 oil class 4 or worse". */
private fun Reader.carryOverWords(air: CarryOverRow): String {
    val mg = words(if (air.atLeast) "oil-air-at-least" else "oil-air-about", "mg" to decimal(air.mgM3Tenths, 1))
    return "$mg, ${classWords(air)}"
}

private fun Reader.classWords(air: CarryOverRow): String {
    val key = if (air.orWorse) "oil-class-or-worse" else "oil-class"
    return when (air.`class`) {
        OilClass.CLASS1 -> words(key, "class" to "1")
        OilClass.CLASS2 -> words(key, "class" to "2")
        OilClass.CLASS3 -> words(key, "class" to "3")
        OilClass.CLASS4 -> words(key, "class" to "4")
        OilClass.CLASS_X -> words("oil-class-x")
    }
}

private fun Reader.labWords(lab: LabRow): String = listOfNotNull(
    words("lab-answered", "bottle" to lab.bottle, "when" to moments.dayOf(lab.drawn), "words" to lab.words),
    if (lab.changedSince) words("lab-other-fill") else null,
).joinToString(", ")
