package app.sumpbook.ui.screen

import app.sumpbook.core.StopScreen
import app.sumpbook.ui.desk.Reader

/** Every stop of a walk in its order, as the core has it now. */
fun Reader.wholeWalk(draft: String): List<StopScreen> {
    val here = phone.stop(draft, null, emptyList(), 0u) ?: return emptyList()
    val all = ArrayList<StopScreen>()
    for (label in LABELS) {
        if (all.size == here.of.toInt()) break
        // An unknown label is answered with the stop where the walk stands.
        val stop = phone.stop(draft, label, emptyList(), 0u) ?: continue
        if (stop.label == label) all += stop
    }
    return all
}

/** Stops are numbered; one that held too much for a screen goes on as its b and c. */
private val LABELS = (1..40).flatMap { number -> listOf("", "b", "c", "d").map { "$number$it" } }
