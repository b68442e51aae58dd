package app.sumpbook.ui.screen

import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Figure
import app.sumpbook.core.FigureAsk
import app.sumpbook.core.How
import app.sumpbook.core.HowGiven
import app.sumpbook.core.ItemFigure
import app.sumpbook.core.LineRow
import app.sumpbook.core.RuleRow
import app.sumpbook.core.RulesSaid
import app.sumpbook.ui.desk.Reader

/** How a figure is read that a line only offers to take. */
data class Offered(val unit: String, val places: Int)

/** The figure that is offered to be taken on the keypad; none: there is none, or it is asked for in its own way. */
fun offered(ask: FigureAsk?): Offered? {
    if (ask?.how != HowGiven.OFFERED) return null
    return ask.places?.let { Offered(ask.unit, it.toInt()) }
}

/** The same as it is read by whoever reads metric: a tread in millimetres, a gauge in kilopascals. The rules are held against either. */
fun Offered.readIn(metric: Boolean): Offered = if (metric) METRIC[unit] ?: this else this

private val METRIC = mapOf("psi" to Offered("kPa", 0), "in/32" to Offered("mm", 1), "in" to Offered("mm", 0), "degF" to Offered("degC", 0))

/** The figure of so many typed digits; none while nothing is typed. */
fun typedFigure(asked: Offered, digits: String): Figure? = digits.toLongOrNull()?.let { Figure(it, asked.places.toUByte(), asked.unit) }

/** A figure as a place carries it: "5 0 psi CHOSEN". */
fun lineOf(figure: ItemFigure): String = with(figure) { "${this.figure.digits} ${this.figure.places} ${this.figure.unit} ${how.name}" }

/** A figure from such a line; none for an empty one. */
fun figureOf(line: String): ItemFigure? {
    val parts = line.split(' ').takeIf { it.size == 4 } ?: return null
    val how = How.entries.firstOrNull { it.name == parts[3] } ?: return null
    return ItemFigure(Figure(parts[0].toLongOrNull() ?: return null, parts[1].toUByteOrNull() ?: return null, parts[2]), how)
}

/** A line answered OK with one figure. */
fun okWith(row: LineRow, figure: ItemFigure, onScreenMs: UInt? = null): Answer =
    Answer(item = row.item, place = row.place, answer = AnswerKind.OK, figures = listOf(figure), onScreenMs = onScreenMs)

/** A line answered OK with a photo. */
fun okWith(row: LineRow, photo: String): Answer = Answer(item = row.item, place = row.place, answer = AnswerKind.OK, photos = listOf(photo))

/** The limits of the rules about a line's figure, the shop's own first. They are what every figure is held against: nothing is judged here. */
fun Reader.limits(unit: String, row: LineRow): List<String> {
    val ask = row.figure ?: return emptyList()
    val any = okWith(row, ItemFigure(Figure(0, 0u, ask.unit), How.OFFERED))
    return phone.rulesSaid(unit, any).rows.mapNotNull { said -> limit(said)?.let { "$it: ${rule(said)}" } }
}

/** What each rule says of a figure, the shop's own first, and whether the one it goes by is broken. */
data class Verdicts(val said: List<String> = emptyList(), val over: Boolean = false)

/** What each rule says of a line's figure. */
fun Reader.verdicts(unit: String, row: LineRow, figure: ItemFigure): Verdicts = verdicts(phone.rulesSaid(unit, okWith(row, figure)))

/** What each rule says of a step's figure; nothing while none is typed. */
fun Reader.stepVerdicts(unit: String, procedure: String, step: String, figure: Figure?): Verdicts =
    figure?.let { verdicts(phone.stepRulesSaid(unit, procedure, step, it)) } ?: Verdicts()

private fun Reader.verdicts(rules: RulesSaid) = Verdicts(
    rules.rows.mapNotNull { said ->
        val limit = limit(said)
        val keeps = said.keeps
        if (limit == null || keeps == null) null else words(if (keeps) "rule-kept" else "rule-not-kept", "limit" to limit, "rule" to rule(said))
    },
    rules.over,
)

/** What the rule the shop goes by says of a measured figure that breaks it; none when it is kept. */
fun Reader.overLimit(unit: String, row: LineRow, figure: ItemFigure): String? {
    val broken = phone.rulesSaid(unit, okWith(row, figure)).rows.firstOrNull { it.goesBy && it.keeps == false } ?: return null
    return words("figure-over", "figure" to broken.figure, "said" to words("rule-not-kept", "limit" to limit(broken).orEmpty(), "rule" to rule(broken)))
}

/** Whose rule it is. */
private fun Reader.rule(said: RuleRow): String = words("rule-set-${said.set}")

private fun Reader.limit(said: RuleRow): String? = said.compares?.let { words("rule-is-$it", "limit" to said.limit.orEmpty()) }
