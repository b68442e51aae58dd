package app.sumpbook.ui.screen

import androidx.compose.runtime.Composable
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.Severity
import app.sumpbook.ui.desk.Reader

/** The parts a severity locks, in words; none where it only stands in the report. */
fun Reader.lockedParts(severity: Severity?): List<String> = when (severity) {
    Severity.ROAD_AND_AIR -> listOf(words("part-road"), words("part-air"))
    Severity.ROAD -> listOf(words("part-road"))
    Severity.AIR -> listOf(words("part-air"))
    Severity.OUTLET -> listOf(THIS_OUTLET)
    Severity.NOTE, null -> emptyList()
}

/** Stands for the outlet that is looked at; the shell has the words for it. */
private const val THIS_OUTLET = ""

/** "ROAD", "ROAD and AIR", "this outlet". */
@Composable
fun partsTogether(parts: List<String>): String {
    val named = parts.map { it.ifEmpty { stringResource(R.string.this_outlet) } }
    return if (named.size == 2) stringResource(R.string.one_and_other, named[0], named[1]) else named.joinToString()
}

/** That something locks until the shop certifies it; none where it locks nothing. */
@Composable
fun locksUntilCertified(parts: List<String>): String? =
    if (parts.isEmpty()) null else stringResource(R.string.defect_locks, partsTogether(parts))
