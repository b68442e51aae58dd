package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.rememberScrollState
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.collectAsState
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.AboutPhone
import app.sumpbook.core.keysOfCautions
import app.sumpbook.ui.control.Chip
import app.sumpbook.ui.control.Chips
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.control.WordsField
import app.sumpbook.ui.desk.Light
import app.sumpbook.ui.desk.LocalSettings
import app.sumpbook.ui.desk.Settings
import app.sumpbook.ui.desk.Settled
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.theme.LocalType

/** How this phone is set, and whose it is. Each choice holds at once; none of them rewrites a record. */
@Composable
fun SettingsScreen() {
    val back = LocalBackStack.current
    val settings = LocalSettings.current
    val shown by seen { phone.about() }
    val cautions by seen { keysOfCautions().map { words(it) } }
    var page by rememberSaveable { mutableStateOf(SettingsPage.CHOICES) }
    val scroll = rememberScrollState()
    // Turned to from below, with large text, a page would be read from its end.
    LaunchedEffect(page) { scroll.scrollTo(0) }
    ScreenFrame(
        scroll = scroll,
        header = { TitleHeader(stringResource(R.string.settings)) { back.back() } },
        strips = { (shown as? Told.Refused)?.let { Strip(sentence(it.why), heavy = true) } },
        secondary = {
            SecondaryButton(stringResource(R.string.own_figures)) { back.go(Place.OwnFigures()) }
            Leaf(R.string.cautions, SettingsPage.CAUTIONS, page) { page = it }
            Leaf(R.string.about_and_licences, SettingsPage.ABOUT, page) { page = it }
        },
        main = { MainPress(stringResource(R.string.settings_done)) { back.back() } },
    ) {
        when (page) {
            SettingsPage.ABOUT -> Section(stringResource(R.string.about_and_licences), listOf(stringResource(R.string.about_cautions), stringResource(R.string.about_says), stringResource(R.string.about_licences), stringResource(R.string.about_codes)))
            SettingsPage.CAUTIONS -> {
                Text(stringResource(R.string.cautions), Modifier.semantics { heading() }, style = LocalType.current.heading)
                (cautions as? Told.Got)?.it?.forEach { Text(it, style = LocalType.current.text) }
            }
            SettingsPage.CHOICES -> {
                settings?.let { Choices(it) }
                (shown as? Told.Got)?.let { Whose(it.it) }
            }
        }
    }
}

/** What stands on the screen: the choices, or something that is only read. */
private enum class SettingsPage { CHOICES, CAUTIONS, ABOUT }

/** Turns to a page, and from it back to the choices. */
@Composable
private fun Leaf(words: Int, to: SettingsPage, at: SettingsPage, turn: (SettingsPage) -> Unit) =
    SecondaryButton(stringResource(if (at == to) R.string.less else words)) { turn(if (at == to) SettingsPage.CHOICES else to) }

@Composable
private fun Choices(settings: Settings) {
    val now by settings.now.collectAsState()
    val way = now.way
    fun set(to: Settled) = settings.settle(to)
    Choice(
        R.string.set_language,
        listOf("en" to stringResource(R.string.english), "es" to stringResource(R.string.spanish)),
        way.language,
    ) { set(now.copy(way = way.copy(language = it))) }
    Choice(R.string.set_units, listOf(false to stringResource(R.string.units_us), true to stringResource(R.string.units_metric)), way.metric) { set(now.copy(way = way.copy(metric = it))) }
    Choice(R.string.set_text, SIZES.map { it to it.toString().removeSuffix(".0") }, now.text) { set(now.copy(text = it)) }
    Choice(R.string.set_contrast, listOf(false to stringResource(R.string.contrast_plain), true to stringResource(R.string.contrast_high)), now.high) { set(now.copy(high = it)) }
    Choice(
        R.string.set_light,
        listOf(Light.AUTO to stringResource(R.string.light_auto), Light.LIGHT to stringResource(R.string.light_light), Light.DARK to stringResource(R.string.light_dark)),
        now.light,
    ) { set(now.copy(light = it)) }
    Choice(R.string.set_thumb, listOf(true to stringResource(R.string.thumb_left), false to stringResource(R.string.thumb_right)), way.leftThumb) { set(now.copy(way = way.copy(leftThumb = it))) }
    Choice(R.string.set_buzz, listOf(true to stringResource(R.string.buzz_strong), false to stringResource(R.string.buzz_off)), now.buzz) { set(now.copy(buzz = it)) }
    WordsField(stringResource(R.string.set_shop_number), now.shopNumber) { set(now.copy(shopNumber = it)) }
}

@Composable
private fun <T> Choice(name: Int, of: List<Pair<T, String>>, chosen: T, choose: (T) -> Unit) {
    Column(verticalArrangement = Arrangement.spacedBy(4.dp)) {
        Text(stringResource(name), Modifier.semantics { heading() }, style = LocalType.current.line)
        Chips { of.forEach { (value, words) -> Chip(words, value == chosen) { choose(value) } } }
    }
}

@Composable
private fun Whose(about: AboutPhone) {
    val hub = about.hub ?: stringResource(R.string.no_hub_known)
    Section(
        stringResource(R.string.this_phone),
        listOf(about.device, "${stringResource(R.string.its_key)}: ${about.key}", "${stringResource(R.string.whose_fleet)}: ${about.fleet}", "${stringResource(R.string.whose_hub)}: $hub"),
    )
}

private val SIZES = listOf(1f, 1.3f, 1.6f, 2f)
