package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.FlowRow
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import kotlinx.coroutines.delay
import app.sumpbook.ui.desk.LocalHeld
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.DisposableEffect
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.PinSaid
import app.sumpbook.core.pinDigits
import app.sumpbook.ui.control.Keypad
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.LocalSettings
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.mark.CodeMark
import app.sumpbook.ui.mark.PairLook
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/** The page for an officer. Whoever holds the phone leaves it only with the signer's PIN, where one was chosen. */
@Composable
fun Roadside(unit: String, signer: Signer) = Larger { OfficersPage(unit, signer) }

@Composable
private fun OfficersPage(unit: String, signer: Signer) {
    val back = LocalBackStack.current
    val act = rememberAct()
    val shown by seen(unit) { Triple(roadsideView(unit), phone.pinChosen(signer.person), pinDigits().toInt()) }
    val told = shown ?: return
    val (view, locked, digits) = (told as? Told.Got)?.it ?: Triple(null, false, 0)
    var leaving by remember { mutableStateOf(false) }
    val settings = LocalSettings.current
    val own = rememberSaveable { settings?.now?.value?.way?.language.orEmpty() }
    // Whatever the officer read it in, the driver goes on in his own.
    fun leave() {
        if (settings != null && settings.now.value.way.language != own) settings.settle(settings.now.value.let { it.copy(way = it.way.copy(language = own)) })
        back.back()
    }
    ScreenFrame(
        header = { RoadsideHeader(view) },
        strips = {
            if (told is Told.Refused) Strip(sentence(told.why), heavy = true)
            view?.let { Strip(stringResource(R.string.as_known, it.asKnown)) }
            view?.news?.forEach { Strip(it) }
            heldWords(isHeld())?.let { Strip(it) }
        },
        main = {
            if (!leaving) MainPress(stringResource(if (locked) R.string.leave_with_pin else R.string.leave_page)) { if (locked) leaving = true else leave() }
        },
        secondary = if (leaving) ({ SecondaryButton(stringResource(R.string.stay_here)) { leaving = false } }) else null,
    ) {
        if (leaving) return@ScreenFrame LeavePart(digits) { pin, wrong ->
            act.now({ phone.givePin(signer.person, pin) }) { said -> if (said is PinSaid.Right || said is PinSaid.NotChosen) leave() else wrong() }
        }
        if (view == null) return@ScreenFrame
        RoadAirPart(PairLook.of(view.record.roadAir, view.record.news.old), view.roadAir)
        Papers(view)
        Section(stringResource(R.string.what_was_left), view.report)
        view.defects.forEach { Section(it.title, listOfNotNull(it.locks) + it.said + it.certificate) }
        ElevenParts(view)
        CheckCode(view)
        Text(stringResource(R.string.says_what_was_recorded), style = LocalType.current.help)
    }
}

/** The page is held while it is open; the system may have asked, and somebody said no. None: there is no such way here. */
@Composable
private fun isHeld(): Boolean? {
    val held = LocalHeld.current ?: return null
    var now by remember { mutableStateOf<Boolean?>(null) }
    DisposableEffect(held) {
        held.hold()
        onDispose { held.letGo() }
    }
    LaunchedEffect(held) {
        while (true) {
            delay(LOOK_MS)
            now = held.isHeld()
        }
    }
    return now
}

/** Said before the phone is handed over: what keeps it at this page, or that nothing does. */
@Composable
private fun heldWords(held: Boolean?): String? = when (held) {
    true -> stringResource(R.string.page_held)
    false -> stringResource(R.string.page_not_held)
    null -> null
}

/** The system's own question takes a moment to answer. */
private const val LOOK_MS = 1_000L

/** What is compared with plates and papers: each by itself on a line, so that no number is broken. */
@Composable
private fun Papers(view: RoadsideView) {
    val record = view.record
    val papers = listOf(
        R.string.plate to record.plate, R.string.chassis_serial to record.serial, R.string.set_serial to record.setSerial,
        (if (record.annualInspectionOver) R.string.annual_inspection_over else R.string.annual_inspection) to view.inspection,
    )
    for ((name, said) in papers) {
        if (said == null) continue
        Column {
            Text(stringResource(name), style = LocalType.current.help, color = LocalTokens.current.soft)
            Text(said, style = LocalType.current.strong)
        }
    }
}

/** The rule's eleven parts, each with its answer, who looked and when; then who signed. */
@Composable
private fun ElevenParts(view: RoadsideView) {
    Text(stringResource(R.string.eleven_parts), Modifier.semantics { heading() }, style = LocalType.current.heading)
    for (part in view.parts) {
        Column(Modifier.semantics(mergeDescendants = true) {}) {
            Text("${part.name}: ${part.answer ?: stringResource(R.string.part_not_looked_at)}", style = if (part.defect) LocalType.current.strong else LocalType.current.text)
            val more = listOfNotNull(part.by) + part.figures
            if (more.isNotEmpty()) Text(more.joinToString("; "), style = LocalType.current.help, color = LocalTokens.current.soft)
        }
    }
    val signed = view.signed.map { (who, how) ->
        val trainer = how.trainer?.let { stringResource(R.string.signed_with_trainer, it, pinWords(how.trainerPinGiven)) }
        listOfNotNull("$who, ${pinWords(how.pinGiven)}", trainer, if (how.short) stringResource(R.string.signed_short_walk) else null).joinToString(", ")
    }
    Section(stringResource(R.string.signed_by), signed.ifEmpty { listOf(stringResource(R.string.signed_nobody)) })
}

@Composable
private fun pinWords(given: Boolean): String = stringResource(if (given) R.string.signed_with_pin else R.string.signed_without_pin)

/** The page's code: the shop, holding the same books, tells by it that the page says what the books say. */
@Composable
private fun CheckCode(view: RoadsideView) {
    CodeMark(view.code, 168.dp, stringResource(R.string.check_code_picture))
    Text(stringResource(R.string.check_code, view.record.check), style = LocalType.current.strong)
    Text(stringResource(R.string.check_code_how), style = LocalType.current.help)
}

@Composable
private fun RoadsideHeader(view: RoadsideView?) {
    FlowRow(Modifier.fillMaxWidth(), Arrangement.SpaceBetween, Arrangement.spacedBy(4.dp), Alignment.CenterVertically) {
        Column {
            Text(view?.record?.door.orEmpty(), Modifier.semantics { heading() }, style = LocalType.current.door)
            Text(view?.record?.fleet.orEmpty(), style = LocalType.current.line)
        }
        OtherLanguage()
    }
}

/** Text of 22 at the least: it is read over a window sill. */
@Composable
private fun Larger(content: @Composable () -> Unit) {
    val now = LocalDensity.current
    CompositionLocalProvider(LocalDensity provides Density(now.density, maxOf(now.fontScale, LEAST)), content = content)
}

private const val LEAST = 22f / 18f

@Composable
private fun LeavePart(digits: Int, give: (String, () -> Unit) -> Unit) {
    var typed by remember { mutableStateOf("") }
    var wrong by remember { mutableStateOf(false) }
    Text(stringResource(if (wrong) R.string.leave_pin_wrong else R.string.leave_pin_asked), style = LocalType.current.text)
    Text(stringResource(R.string.leave_pin_digits, typed.length, digits), style = LocalType.current.heading)
    Keypad(
        {
            typed += it
            wrong = false
            if (typed.length == digits) {
                give(typed) { wrong = true }
                typed = ""
            }
        },
        { typed = typed.dropLast(1) },
    )
}
