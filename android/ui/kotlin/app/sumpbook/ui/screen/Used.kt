package app.sumpbook.ui.screen

import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.LockPart
import app.sumpbook.core.OnCall
import app.sumpbook.core.Said
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.control.WordsField
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Signer

/** What of a unit is locked, each part by its name. */
private data class UsedView(val door: String, val parts: List<Pair<LockPart, String>>, val locked: List<String>, val onCall: List<OnCall>)

private fun Reader.usedView(unit: String, person: String): UsedView {
    val record = phone.unit(unit, person)
    val locked = listOf(record.roadAir.road, record.roadAir.air).filter { it.part in record.usedAllTheSame }.map(::partWords)
    return UsedView(record.door, record.usedAllTheSame.map { it to part(it) }, locked.map { (listOf(it.what) + it.why).joinToString(". ") }, fleet.onCall)
}

/** A unit was used although it is locked: the record says so, and why. Nothing is refused, and no lock ends by it. */
@Composable
fun Used(unit: String, signer: Signer) {
    val back = LocalBackStack.current
    val act = rememberAct()
    val entry = rememberEntryId()
    var which by rememberSaveable { mutableStateOf<String?>(null) }
    var why by rememberSaveable { mutableStateOf("") }
    val shown by seen(unit, signer.person) { usedView(unit, signer.person) }
    val told = shown ?: return
    val view = (told as? Told.Got)?.it ?: return Refused((told as? Told.Refused)?.let { sentence(it.why) }.orEmpty()) { back.back() }
    val kept = stringResource(R.string.used_kept)
    val chosen = view.parts.firstOrNull { it.second == which }?.first
    ScreenFrame(
        header = { DoorHeader(view.door, stringResource(R.string.used_all_the_same)) { back.back() } },
        strips = {
            act.refused?.let { Strip(sentence(it), heavy = true) }
            view.locked.forEach { Strip(it, heavy = true) }
        },
        secondary = { CallThem(view.onCall) },
        main = {
            val whyNot = when {
                chosen == null -> stringResource(R.string.used_what_first)
                why.isBlank() -> stringResource(R.string.reason_first)
                else -> null
            }
            MainPress(stringResource(R.string.used_keep), whyNot) {
                val said = Said(unit = unit, person = signer.person, id = entry, trainer = signer.trainer)
                if (chosen != null) act.now({ phone.keepUsedAllTheSame(said, chosen, why.trim()) }) {
                    back.unit(unit)
                    back.said = kept
                }
            }
        },
    ) {
        Asked(stringResource(R.string.used_what), view.parts.map { (part, name) -> name to usedWords(part, name) }, which) { which = it }
        WordsField(stringResource(R.string.used_why), why) { why = it }
    }
}

/** "The truck was driven (ROAD)". */
@Composable
private fun usedWords(part: LockPart, name: String): String = stringResource(if (part == LockPart.Road) R.string.used_driven else R.string.used_air, name)
