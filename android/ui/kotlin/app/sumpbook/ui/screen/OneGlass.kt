package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.LevelSaid
import app.sumpbook.core.OilLook
import app.sumpbook.core.Said
import app.sumpbook.core.Wait
import app.sumpbook.core.Warmth
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Reader
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

/** The words beside the glass: how the oil may look, and cold or hot. */
private data class GlassAsk(val caution: String, val warmth: OilWarmthWords, val looks: Map<OilLook, String>, val lookName: String)

private fun Reader.glassAsk() = GlassAsk(
    caution = words("caution-read-glass"),
    warmth = oilWarmthWords(),
    looks = OilLook.entries.associateWith { words("look-${it.name.lowercase()}") },
    lookName = words("item-oil-look"),
)

/** What goes into the record of how long it had stood; nothing while nobody has said. */
private fun waited(wait: Wait) = when (wait) {
    is Wait.Enough -> wait.v1
    is Wait.TooShort -> wait.record
    Wait.Ask -> null
}

/** A level of the glass by itself, between two walks. */
@Composable
fun OneGlass(unit: String, signer: Signer) {
    val back = LocalBackStack.current
    val act = rememberAct()
    val entry = rememberEntryId()
    var given by rememberSaveable(stateSaver = GlassGiven.Saver) { mutableStateOf(GlassGiven()) }
    var warmth by rememberSaveable { mutableStateOf<Warmth?>(null) }
    var look by rememberSaveable { mutableStateOf<OilLook?>(null) }
    var photo by rememberSaveable { mutableStateOf<String?>(null) }
    // Whole degrees, as a display shows them: hot oil stands higher, and by them it compares with cold.
    var degrees by rememberSaveable { mutableStateOf<String?>(null) }
    var asking by rememberSaveable { mutableStateOf(false) }
    val metric = LocalOwnWay.current.metric
    val hotAt = degrees?.takeIf { warmth == Warmth.HOT }?.let { degrees(it, metric) }
    val shown by seen(unit, given, warmth, hotAt) { glassView(unit, given.glass, given.stopped, warmth, hotAt) to glassAsk() }
    val told = shown ?: return
    val (view, ask) = (told as? Told.Got)?.it ?: return Refused((told as? Told.Refused)?.let { sentence(it.why) }.orEmpty()) { back.back() }
    val sign = degreesSign(metric)
    val said = degrees?.let { withUnit(it, sign) }
    if (asking) {
        fun say(figure: String?) {
            degrees = figure
            asking = false
        }
        val wanted = FigureWanted(ask.warmth.temperature, sign, places = 0, belowZero = false, said = said)
        return FigureAsk(view.record.door, wanted, goBack = { asking = false }, clear = if (said == null) null else ({ say(null) })) { say(it) }
    }
    ScreenFrame(
        header = { DoorHeader(view.record.door, stringResource(R.string.glass_name)) { back.back() } },
        strips = {
            act.refused?.let { Strip(sentence(it), heavy = true) }
            Strip(ask.caution, small = true)
        },
        main = {
            MainPress(view.main ?: stringResource(R.string.glass_keep_none), view.whyNot) {
                val glass = given.glass ?: return@MainPress
                val signed = Said(unit = unit, person = signer.person, id = entry, trainer = signer.trainer)
                act.now({ phone.keepLevel(signed, LevelSaid(glass, warmth, waited(view.record.wait), look, photo, oilTemperature = hotAt)) }) { back.back() }
            }
        },
    ) {
        GlassStrips(view)
        GlassPart(view, given) { given = it }
        // Not among the fixed buttons: there it would take the steps out of the frame.
        SecondaryButton(stringResource(R.string.top_up), Modifier.fillMaxWidth()) { back.go(Place.TopUp(unit, "")) }
        OilWarmth(ask.warmth, warmth, said, { warmth = it }) { asking = true }
        Text(ask.lookName, style = LocalType.current.line)
        Chips { ask.looks.forEach { (one, words) -> Chip(words, look == one) { look = one } } }
        if (view.record.photoAsked) PhotoOfTheDay(view, photo) { photo = it } else OnePhoto(photo) { photo = it }
        Section(stringResource(R.string.oil), view.oil)
    }
}
