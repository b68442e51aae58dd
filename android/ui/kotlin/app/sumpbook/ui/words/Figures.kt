package app.sumpbook.ui.words

import app.sumpbook.core.Figure
import java.math.BigDecimal
import java.math.RoundingMode
import java.util.Locale

/** Hours as a meter shows them: 28624 tenths are "2,862.4", in both languages as US crews write them. */
fun hours(tenths: Long): String {
    val whole = String.format(Locale.US, "%,d", Math.abs(tenths) / 10)
    val sign = if (tenths < 0) "-" else ""
    return "$sign$whole.${Math.abs(tenths) % 10}"
}

/** A whole number with its step in its name: 120 hundredths are "1.20". */
fun decimal(steps: Long, places: Int): String = BigDecimal.valueOf(steps, places).toPlainString()

/** A figure's value: digits 25 with 2 places are 0.25. */
fun value(figure: Figure): BigDecimal = BigDecimal.valueOf(figure.digits, figure.places.toInt())

/** A figure in its own unit: "0.25 qt", "48 %"; a count stands by itself. */
fun figure(figure: Figure): String = unitWords(figure.unit, value(figure).toPlainString())

/** A value with its unit as it is written on a gauge or a tag. */
fun unitWords(unit: String, value: String): String = when (unit) {
    "count" -> value
    "in/32" -> "$value/32 in"
    "degF" -> "$value \u00B0F"
    "degC" -> "$value \u00B0C"
    else -> "$value $unit"
}

/** A volume as it is read here: a poured 0.25 qt stands so, or as 237 mL. */
fun volume(figure: Figure, metric: Boolean): String = when {
    metric && figure.unit == "qt" -> "${value(figure).multiply(ML_IN_QT).setScale(0, RoundingMode.HALF_UP).toPlainString()} mL"
    !metric && figure.unit == "mL" -> quarts(value(figure))
    else -> figure(figure)
}

/** A volume of so many millilitres. */
fun volume(ml: Long, metric: Boolean): String = if (metric) "$ml mL" else quarts(BigDecimal.valueOf(ml))

private fun quarts(ml: BigDecimal): String = "${ml.divide(ML_IN_QT, 2, RoundingMode.HALF_UP).toPlainString()} qt"

/** A US liquid quart: 57.75 cubic inches of 2.54 cm (NIST Handbook 44, appendix C). */
private val ML_IN_QT = BigDecimal("946.352946")

/** A length of time as a clock face has it: 190 s are "3:10". */
fun minutesAndSeconds(ms: Long): String {
    val seconds = ms / 1_000
    return String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60)
}

/** The size of a file: "0.9 kB", "1.3 MB". What is smaller than a tenth is a tenth. */
fun fileSize(bytes: Int): String {
    val (of, unit) = if (bytes < 1_000_000) 1_000L to "kB" else 1_000_000L to "MB"
    val tenths = BigDecimal.valueOf(bytes.toLong()).divide(BigDecimal.valueOf(of), 1, RoundingMode.UP)
    return "${tenths.toPlainString()} $unit"
}
