package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.foundation.rememberScrollState
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.key
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.Figure
import app.sumpbook.core.NotSo
import app.sumpbook.core.OnCall
import app.sumpbook.core.Said
import app.sumpbook.core.SiteDust
import app.sumpbook.core.StepSaid
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.control.WordsField
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.frame.Seen
import app.sumpbook.ui.frame.rememberSeen
import app.sumpbook.ui.mark.StepLine
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.LocalOwnWay
import java.time.Instant
import kotlinx.coroutines.launch

/** What one can do at a step. */
@Stable
private class AtStep(val view: StepsView, val step: StepWords, val behind: Int, private val stamp: () -> String, val go: (StepSaid) -> Unit, val stop: (StepSaid?) -> Unit) {
    val last: Boolean get() = behind + 1 == view.steps.size

    fun said(word: String? = null, figure: Figure? = null, place: String? = null) = StepSaid(step.row.id, stamp(), word, figure, place)
}

/** A procedure: one step, one caution, in order. With the air locked it opens at the lock, not at the first step. */
@Composable
fun Steps(unit: String, procedure: String, signer: Signer) {
    val back = LocalBackStack.current
    val act = rememberAct()
    val handset = LocalDesk.current.handset
    val entry = rememberEntryId()
    var spite by rememberSaveable { mutableStateOf("") }
    var used by rememberSaveable { mutableStateOf(false) }
    // Recorded with the last step, so that a slip of the thumb weighs no hour.
    var dust by rememberSaveable { mutableStateOf<SiteDust?>(null) }
    val shown by seen(unit, procedure, signer.person) { stepsView(unit, procedure, signer.person) }
    // What was said last stands at once: the next tap says the next step.
    var after by remember { mutableStateOf<StepsView?>(null) }
    val told = shown ?: return
    val read = (told as? Told.Got)?.it ?: return Refused((told as? Told.Refused)?.let { sentence(it.why) }.orEmpty()) { back.back() }
    val view = after?.takeIf { it.record.said.size > read.record.said.size } ?: read
    val said = view.record.said
    val keptLocked = stringResource(R.string.steps_kept_locked, PARTS)
    val keptPlain = stringResource(R.string.steps_kept)
    val why = spite.trim().ifEmpty { null } ?: view.record.inSpiteOfLock
    fun by(draft: String?) = Said(unit = unit, person = signer.person, id = draft ?: entry, trainer = signer.trainer)
    fun record(all: List<StepSaid>) = act.now({
        phone.keepSteps(by(view.record.draft), procedure, all, why)
        lockedParts(unit, signer.person)
    }) { locked ->
        back.unit(unit)
        back.said = if (locked.isEmpty()) keptPlain else keptLocked.replace(PARTS, locked.joinToString(", "))
    }
    // Each step is kept as it is said, through a kill of the app; after the last one all of them are recorded.
    fun go(one: StepSaid) = act.now({
        phone.sayStep(unit, procedure, signer.person, one, why)
        stepsView(unit, procedure, signer.person).also { now ->
            if (!now.isWhole) return@also
            phone.keepSteps(by(now.record.draft), procedure, now.record.said, why)
            dust?.let { phone.keepSite(Said(unit = unit, person = signer.person, trainer = signer.trainer), it) }
        }
    }) { now -> if (now.isWhole) back.back() else after = now }
    // What was confirmed is kept however one leaves: the compressor may turn already.
    val leave = { if (said.isEmpty()) back.back() else record(said) }
    val refused = act.refused?.let { sentence(it) }
    val locked = view.locked
    val step = view.steps.getOrNull(view.behind)
    val title = "${view.title} ${(view.behind + 1).coerceAtMost(view.steps.size)}\u00A0/\u00A0${view.steps.size}"
    when {
        locked != null && !used && view.record.inSpiteOfLock == null ->
            AtTheLock(view.door, view.onCall, title, refused, locked, spite, { spite = it }, leave) { used = true }
        step == null -> Refused(refused ?: stringResource(R.string.steps_none)) { back.back() }
        else -> {
            val at = AtStep(view, step, view.behind, { Instant.ofEpochMilli(handset.now()).toString() }, ::go) { one ->
                if (one == null && said.isEmpty()) back.back() else record(said + listOfNotNull(one))
            }
            // Another step begins anew, and at its top.
            key(step.row.id, view.behind) {
                OneStep(unit, at, title, refused, locked?.inALine(), view.opening.takeIf { said.isEmpty() && locked == null }, leave) {
                    if (at.last) view.site?.let { SitePart(it, dust) { one -> dust = one } }
                }
            }
        }
    }
}

/** The lock stands before the first step; whoever goes on all the same says why, and it is recorded. */
@Composable
private fun AtTheLock(door: String, onCall: List<OnCall>, title: String, refused: String?, locked: PartWords, spite: String, say: (String) -> Unit, leave: () -> Unit, use: () -> Unit) = ScreenFrame(
    header = { DoorHeader(door, title, goBack = leave) },
    strips = {
        refused?.let { Strip(it, heavy = true) }
        Strip(locked.inALine(), heavy = true)
    },
    secondary = { CallThem(onCall) },
    main = { MainPress(stringResource(R.string.air_all_the_same), if (spite.isBlank()) stringResource(R.string.reason_first) else null, onPress = use) },
) { WordsField(stringResource(R.string.air_why_all_the_same), spite, onChange = say) }

/** One step: what it is, its caution, its time; done, or not so. What stands over all of them, [opening], comes after them. */
@Composable
private fun OneStep(
    unit: String,
    at: AtStep,
    title: String,
    refused: String?,
    locked: String?,
    opening: String?,
    leave: () -> Unit,
    beside: @Composable ColumnScope.() -> Unit,
) {
    val rows = rememberSeen(rememberScrollState())
    val key = at.step.row.id + at.behind
    var notSo by rememberSaveable(key) { mutableStateOf(false) }
    var word by rememberSaveable(key) { mutableStateOf<String?>(null) }
    var place by rememberSaveable(key) { mutableStateOf<String?>(null) }
    var digits by rememberSaveable(key) { mutableStateOf<String?>(null) }
    val asked = offered(at.step.row.figure)?.readIn(LocalOwnWay.current.metric)
    val figure = asked?.let { typedFigure(it, digits.orEmpty()) }
    val chosen = at.step.notSo.firstOrNull { it.row.word == word }
    ScreenFrame(
        header = { DoorHeader(at.view.door, title, goBack = leave) },
        strips = {
            refused?.let { Strip(it, heavy = true) }
            locked?.let { Strip(it, heavy = true) }
        },
        secondary = {
            if (notSo) {
                SecondaryButton(stringResource(R.string.steps_so_after_all)) { notSo = false }
                if (chosen?.row?.means == NotSo.Wait) SecondaryButton(stringResource(R.string.stop_here)) { at.stop(at.said(word, figure)) }
                CallThem(at.view.onCall)
            } else {
                if (asked != null) SecondaryButton(stringResource(if (digits == null) R.string.figure_give else R.string.figure_not)) { digits = if (digits == null) "" else null }
                SecondaryButton(stringResource(R.string.not_so)) { notSo = true }
            }
        },
        main = {
            if (notSo) NotSoPress(at, chosen, figure, place) { notSo = false }
            else DonePress(at, rows) { at.go(at.said(figure = figure)) }
        },
        scroll = rows.scroll,
        seen = rows,
    ) {
        StepLine(at.view.steps.size, at.behind)
        StepHead(at.step, rows)
        at.step.saidBefore?.let { Text(it, style = LocalType.current.help, color = LocalTokens.current.soft) }
        if (notSo) NotSoPart(at.step, chosen, { word = it }, place) { place = it } else StepBody(at.step, rows, key, digits == null)
        if (!notSo) beside()
        if (at.last) Section(at.view.skippedTitle, at.view.skipped)
        val typed = digits
        if (!notSo && asked != null && typed != null) {
            val verdicts by seen(unit, at.step.row.id, typed) { stepVerdicts(unit, at.view.record.procedure, at.step.row.id, figure) }
            FigureKeys(asked, typed, { (verdicts as? Told.Got)?.it?.let { SaidByRules(it) } }) { digits = it }
        }
        opening?.let { Strip(it) }
    }
}

/** Done is said of what was seen: until then a press turns to what was not. */
@Composable
private fun DonePress(at: AtStep, rows: Seen, done: () -> Unit) {
    val scope = rememberCoroutineScope()
    val below = at.view.below.getOrNull(rows.left - 1)
    MainPress(
        below ?: stringResource(if (at.last) R.string.done_all else R.string.done_next), below, whyAbove = false,
        onEarly = { scope.launch { rows.turn() } }, onPress = done,
    )
}

/** What is done about what is not so: it waits, it goes on with a mark, or it stops here. */
@Composable
private fun NotSoPress(at: AtStep, chosen: NotSoWords?, figure: Figure?, place: String?, so: () -> Unit) = when {
    at.step.notSo.isEmpty() -> MainPress(stringResource(R.string.stop_here)) { at.stop(null) }
    chosen == null -> MainPress(stringResource(R.string.stop_here), stringResource(R.string.steps_word_first)) {}
    at.step.asksPlace(chosen) && place == null -> MainPress(stringResource(R.string.stop_here), stringResource(R.string.steps_place_first)) {}
    else -> {
        val said = { at.said(chosen.row.word, figure, place.takeIf { at.step.asksPlace(chosen) }) }
        when (chosen.row.means) {
            NotSo.Wait -> MainPress(stringResource(R.string.steps_so_now)) {
                at.go(said())
                so()
            }
            NotSo.Mark -> MainPress(stringResource(R.string.steps_go_on_marked)) { at.go(said()) }
            NotSo.Refuse, NotSo.NoDriving, is NotSo.Lock -> MainPress(stringResource(R.string.stop_here)) { at.stop(said()) }
        }
    }
}

/** Stands in a sentence where the locked parts will. */
private const val PARTS = "{parts}"
