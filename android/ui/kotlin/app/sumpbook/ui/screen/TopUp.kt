package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.ColumnScope
import androidx.compose.foundation.rememberScrollState
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.runtime.withFrameNanos
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.Fluid
import app.sumpbook.core.Pour
import app.sumpbook.core.Signed
import app.sumpbook.core.TopUpSaid
import app.sumpbook.ui.control.CheckLine
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Act
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.LocalOwnWay

/** A top-up; an empty [draft] begins one, durable before its first question. */
@Composable
fun TopUp(unit: String, draft: String, signer: Signer) {
    val back = LocalBackStack.current
    val act = rememberAct()
    if (draft.isEmpty()) {
        LaunchedEffect(unit) {
            act.now({ phone.beginTopUp(unit, signer.person, Fluid.COMPRESSOR_OIL) }) { back.goInstead(Place.TopUp(unit, it)) }
        }
        act.refused?.let { Refused(sentence(it)) { back.back() } }
        return
    }
    val shown by seen(unit, draft) { topUpView(draft) }
    val told = shown ?: return
    val view = (told as? Told.Got)?.it
    if (view == null) {
        // Signed just now: the draft is gone, and so is this screen in a moment.
        if (!act.underWay) Refused((told as? Told.Refused)?.let { sentence(it.why) }.orEmpty()) { back.unit(unit) }
        return
    }
    TopUpForm(unit, draft, view, act, signer)
}

@Composable
private fun TopUpForm(unit: String, draft: String, view: TopUpView, act: Act, signer: Signer) {
    val back = LocalBackStack.current
    var pour by rememberSaveable(stateSaver = PourGiven.Saver) { mutableStateOf(PourGiven()) }
    var typing by rememberSaveable { mutableStateOf(false) }
    var fluids by rememberSaveable { mutableStateOf(false) }
    var asking by rememberSaveable { mutableStateOf(false) }
    val metric = LocalOwnWay.current.metric
    val record = view.record
    val say = { said: TopUpSaid -> act.now({ phone.sayTopUp(draft, said) }) }
    var noDrum by remember { mutableStateOf<String?>(null) }
    val scan = rememberScan { text -> act.now({ drumScanned(draft, text) }) { noDrum = it } }
    val waited = rememberWaited(pour)
    val scroll = rememberScrollState()
    LaunchedEffect(record.mayNotPour, view.mix) {
        if (!record.mayNotPour) return@LaunchedEffect
        // The warning has to have its place first; whatever was chosen further down, it is what is seen then.
        withFrameNanos { }
        scroll.scrollTo(0)
    }
    fun add(alreadyPoured: Boolean) {
        val figure = pour.volume ?: return
        act.now({ phone.addPour(draft, Pour(figure, pour.after.glass, waited()), alreadyPoured) }) {
            pour = PourGiven()
            typing = false
        }
    }
    fun finish() = act.now({
        if (view.isOil) phone.sayTopUp(draft, TopUpSaid(capTight = true))
        phone.signTopUp(draft, Signed(pinGiven = false, trainer = signer.trainer))
    }) { back.unit(unit) }
    if (asking) {
        val wanted = FigureWanted(view.warmth.temperature, degreesSign(metric), places = 0, belowZero = false, said = view.temperature)
        return FigureAsk(record.door, wanted, goBack = { asking = false }, clear = null) {
            say(TopUpSaid(oilTemperature = degrees(it, metric)))
            asking = false
        }
    }
    ScreenFrame(
        header = { DoorHeader(record.door, if (record.pours.isEmpty()) view.fluid else stringResource(R.string.top_up_title, view.fluid, view.poured)) { back.back() } },
        strips = {
            act.refused?.let { Strip(sentence(it), heavy = true) }
            ScanStrip(scan)
            noDrum?.let { Strip(it, heavy = true) }
            if (record.mayNotPour) view.mix?.let { Strip(it, heavy = true) } else view.cautions.forEach { Strip(it) }
        },
        secondary = { TopUpActs(unit, draft, view, pour, act, typing, { typing = it }, { fluids = !fluids }) { add(alreadyPoured = true) } },
        main = { TopUpMain(view, pour, { add(alreadyPoured = false) }, ::finish) },
        scroll = scroll,
    ) {
        if (fluids && record.pours.isEmpty()) {
            Fluids(unit, draft, act, signer) { fluids = false }
            return@ScreenFrame
        }
        if (record.sealed) Strip(stringResource(R.string.sealed_fluid))
        if (record.mayNotPour) TwoOils(view)
        // The gate first; once it is open it stands below what is done next.
        val gate = record.main.whyNot != null
        if (gate) Gate(view, scan, say)
        if (record.locksAir) Strip(stringResource(R.string.air_locked_now, view.locks), heavy = true)
        view.pours.forEach { Line(stringResource(R.string.pour_number, it)) }
        view.level?.let { Text(it, style = LocalType.current.strong) }
        view.astray?.let { Strip(it) }
        PourPart(view, pour, typing, { said -> say(TopUpSaid(before = said)) }) { pour = it }
        // Offered once the cap may be opened: hot oil stands higher, and nothing waits for the figure.
        if (view.isOil && !gate) OilWarmth(view.warmth, record.warmth, view.temperature, { say(TopUpSaid(warmth = it)) }) { asking = true }
        if (!gate) Gate(view, scan, say)
        Section(stringResource(R.string.pours_before), view.last + view.use)
    }
}

/** What must be seen before the cap: the drum's label, and both signs of zero. */
@Composable
private fun ColumnScope.Gate(view: TopUpView, scan: Scan?, say: (TopUpSaid) -> Unit) {
    if (!view.isOil) return
    Drum(view, scan, say)
    CheckLine(stringResource(R.string.gauge_zero), view.record.gaugeZero == true) { say(TopUpSaid(gaugeZero = it)) }
    CheckLine(stringResource(R.string.blow_down_silent), view.record.blowDownSilent == true) { say(TopUpSaid(blowDownSilent = it)) }
}

@Composable
private fun TopUpMain(view: TopUpView, pour: PourGiven, add: () -> Unit, finish: () -> Unit) {
    if (!view.wantsPour) return MainPress(if (view.isOil) view.main else stringResource(R.string.top_up_finish), onPress = finish)
    val whyNot = view.whyNot ?: when {
        view.record.wantsBefore -> stringResource(R.string.level_before_first)
        pour.volume == null -> stringResource(R.string.volume_first)
        view.record.wantsAfter && pour.after.glass == null -> stringResource(R.string.look_again_first)
        else -> null
    }
    MainPress(view.main, whyNot, onPress = add)
}

/** What is beside the next pour: another fluid, a pour that was made already, finishing under the middle. */
@Composable
private fun TopUpActs(
    unit: String,
    draft: String,
    view: TopUpView,
    pour: PourGiven,
    act: Act,
    typing: Boolean,
    type: (Boolean) -> Unit,
    fluids: () -> Unit,
    poured: () -> Unit,
) {
    val back = LocalBackStack.current
    if (view.record.pours.isEmpty() && pour.volume == null) {
        SecondaryButton(stringResource(R.string.other_fluid), onPress = fluids)
        SecondaryButton(stringResource(R.string.not_poured)) { act.now({ phone.dropDraft(draft) }) { back.unit(unit) } }
    }
    if (view.record.onlyIfPoured) {
        if (pour.volume == null) SecondaryButton(stringResource(R.string.already_poured)) { type(!typing) }
        else SecondaryButton(stringResource(R.string.keep_already_poured), onPress = poured)
    }
}
