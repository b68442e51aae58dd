package app.sumpbook.ui

import app.sumpbook.core.Answer
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.Figure
import app.sumpbook.core.How
import app.sumpbook.core.HowGiven
import app.sumpbook.core.ItemFigure
import app.sumpbook.core.Phone
import app.sumpbook.core.StopScreen

/** Figures a line is not answered without. */
private val ASKED = setOf(HowGiven.ASKED, HowGiven.CHOSEN, HowGiven.TIMED)

/** Every stop of a walk. */
fun Phone.stops(walk: String): List<StopScreen> =
    (1..40).flatMap { listOf("$it", "${it}b") }.mapNotNull { label -> stop(walk, label, emptyList(), 0u)?.takeIf { it.label == label } }

/** A walk in which everything is answered OK, with [tenths] on the meter and a figure for each unit asked. */
fun Phone.answeredWalk(unit: String, person: String, tenths: Long, figure: (String) -> Long): String {
    val walk = beginPreTrip(unit, person, null)
    for (stop in stops(walk)) {
        reachStop(walk, stop.label)
        for (line in stop.lines) {
            val asked = line.figure?.takeIf { it.how in ASKED }?.unit ?: continue
            if (asked == "h") preTripHours(walk, tenths)
            else answerLine(walk, Answer(line.item, line.place, AnswerKind.OK, figures = listOf(ItemFigure(Figure(figure(asked), 0u, asked), How.ASKED))))
        }
        if (checkNotNull(stop(walk, stop.label, emptyList(), 0u)).left > 0u) okTogether(walk, stop.label, 5_000u)
    }
    return walk
}
