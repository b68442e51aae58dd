package app.sumpbook.ui.screen

import app.sumpbook.core.DisabledReason
import app.sumpbook.core.NotSo
import app.sumpbook.core.NotSoRow
import app.sumpbook.core.OnCall
import app.sumpbook.core.Severity
import app.sumpbook.core.StepRow
import app.sumpbook.core.StepSaidRow
import app.sumpbook.core.StepsScreen
import app.sumpbook.core.hasText
import app.sumpbook.ui.desk.Reader

/** A word for what is not so, and the parts it locks. */
data class NotSoWords(val row: NotSoRow, val words: String, val locks: List<String>)

/** One step, with its words. */
data class StepWords(val row: StepRow, val name: String, val ok: String, val stops: String, val hint: String?, val caution: String?, val notSo: List<NotSoWords>, val saidBefore: String?) {
    /** Which of the unit's hoses it is has to be said with this word. */
    fun asksPlace(of: NotSoWords): Boolean = row.places.isNotEmpty() && (of.row.means as? NotSo.Lock)?.v1 == Severity.OUTLET
}

/** A procedure of one unit, with its words. */
data class StepsView(
    val record: StepsScreen,
    val title: String,
    val steps: List<StepWords>,
    /** Why what it begins with is locked; none: nothing stands before the first step. */
    val locked: PartWords?,
    val opening: String,
    /** Steps that were not so and gone on from, each with its word; they are listed at the last step. */
    val skipped: List<String>,
    val skippedTitle: String,
    /** "1 more below" and so on: what the main button says while so many parts of a step were not seen. */
    val below: List<String>,
    val onCall: List<OnCall>,
    /** The site's dust, asked with the last step of an arrival. */
    val site: SiteWords? = null,
) {
    val door: String get() = record.door

    /** How many steps are behind one. */
    val behind: Int get() = record.behind.toInt()

    /** Every step is behind one. */
    val isWhole: Boolean get() = behind == steps.size
}

/** A procedure of a unit in words, in the core's order. */
fun Reader.stepsView(unit: String, procedure: String, person: String): StepsView {
    val record = phone.procedure(unit, procedure, person)
    return StepsView(
        record = record,
        title = procedureTitle(record.procedure),
        steps = record.steps.map { stepWords(it, record.hints) },
        locked = record.locked?.let(::partWords),
        opening = words("caution-opening"),
        skipped = record.steps.mapNotNull { step -> step.said?.takeIf { it.skipped }?.let { "${words("step-${step.id}")}: ${notSoWords(it)}" } },
        skippedTitle = words("steps-skipped"),
        below = (1u..STEP_PARTS).map { whyNot(DisabledReason.MoreBelow(it)) },
        onCall = fleet.onCall,
        site = record.site?.let(::siteWords),
    )
}

/** @param hints how it is done is told as well, where there is something to say */
private fun Reader.stepWords(row: StepRow, hints: Boolean) = StepWords(
    row = row,
    name = words("step-${row.id}"),
    ok = words("step-${row.id}.ok"),
    stops = words("step-${row.id}.stops"),
    hint = "step-${row.id}.hint".takeIf { hints && hasText(way.language, it) }?.let { words(it) },
    caution = row.caution?.let { words("caution-$it") },
    saidBefore = row.said?.let { said ->
        val (at, by) = moments.at(said.at) to said.by.orEmpty()
        if (said.notSo == null) words("step-said", "when" to at, "by" to by) else words("step-said-not-so", "when" to at, "by" to by, "word" to notSoWords(said))
    },
    notSo = row.notSo.map { NotSoWords(it, words("not-so-${it.word}"), lockedParts(severity(it.means))) },
)

/** The word by which a step was not so; of a step that has no words for it: only that. */
private fun Reader.notSoWords(said: StepSaidRow): String = said.notSo?.ifEmpty { null }?.let { words("not-so-$it") }.orEmpty()

private fun severity(means: NotSo): Severity? = (means as? NotSo.Lock)?.v1

/** What a procedure is called here. */
fun Reader.procedureTitle(procedure: String): String = words("procedure-$procedure")

/** A step's name, what is so when it is done, its caution. */
private const val STEP_PARTS = 3u
