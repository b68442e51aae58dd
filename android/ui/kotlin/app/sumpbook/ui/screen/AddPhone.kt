package app.sumpbook.ui.screen

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableIntStateOf
import androidx.compose.runtime.mutableLongStateOf
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.AboutPhone
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.control.WordsField
import app.sumpbook.ui.desk.Home
import app.sumpbook.ui.desk.HomeNow
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.Refusal
import app.sumpbook.ui.desk.ShopTried
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.theme.LocalType
import app.sumpbook.ui.words.minutesAndSeconds
import kotlinx.coroutines.delay
import kotlinx.coroutines.launch

/** From the box to the fleet: the shop's code as text, and a name for this phone. */
@Composable
fun AddPhone(home: Home, added: (HomeNow) -> Unit) {
    val scope = rememberCoroutineScope()
    var name by rememberSaveable { mutableStateOf("") }
    var code by rememberSaveable { mutableStateOf("") }
    var refused by remember { mutableStateOf<Refusal?>(null) }
    var underWay by remember { mutableStateOf(false) }
    val scan = rememberScan { code = it }
    val whyNot = when {
        name.isBlank() -> stringResource(R.string.name_first)
        code.isBlank() -> stringResource(R.string.code_first)
        else -> null
    }
    ScreenFrame(
        header = { ScreenTitle(stringResource(R.string.add_phone)) },
        strips = {
            refused?.let { Strip(sentence(it), heavy = true) }
            ScanStrip(scan)
        },
        secondary = scan?.let { { if (code.isBlank() && it.camera) ScanPictureButton(it) else if (code.isNotBlank()) SecondaryButton(stringResource(R.string.scan_again)) { it.now() } } },
        main = {
            if (scan != null && code.isBlank()) MainPress(stringResource(R.string.scan_shops_code)) { scan.now() }
            else MainPress(stringResource(R.string.add_phone), whyNot) {
                if (underWay) return@MainPress
                underWay = true
                scope.launch {
                    val now = home.add(code, name.trim())
                    underWay = false
                    if (now is HomeNow.Shut) refused = now.why else added(now)
                }
            }
        },
    ) {
        Text(stringResource(R.string.where_the_code_is), style = LocalType.current.text)
        WordsField(stringResource(R.string.phone_name), name) { name = it }
        WordsField(stringResource(R.string.shop_code), code) { code = it }
    }
}

/** Until the shop has let this phone in and its books have come: the two keys to compare, and the time it has waited. */
@Composable
fun WaitingForShop(again: () -> Unit, another: () -> Unit, then: @Composable () -> Unit) {
    val shown by seen { phone.about() }
    when (val told = shown) {
        null -> Unit
        is Told.Refused -> BookShut(sentence(told.why), again)
        is Told.Got -> if (told.it.waitsForItsBooks) Waiting(told.it, another) else then()
    }
}

@Composable
private fun Waiting(about: AboutPhone, another: () -> Unit) {
    val desk = LocalDesk.current
    var tries by remember { mutableIntStateOf(0) }
    var waited by remember { mutableLongStateOf(0) }
    var last by remember { mutableStateOf<Told<ShopTried>?>(null) }
    var other by remember { mutableStateOf(false) }
    val began = remember { desk.handset.ticks() }
    LaunchedEffect(tries) {
        while (true) {
            last = desk.exchangeOnce(EXCHANGE_MS)
            waited = desk.handset.ticks() - began
            delay(BETWEEN_MS)
        }
    }
    ScreenFrame(
        header = { ScreenTitle(stringResource(R.string.add_phone)) },
        strips = {
            (last as? Told.Refused)?.let { Strip(sentence(it.why), heavy = true) }
            if (other) Strip(stringResource(R.string.not_the_same_then), heavy = true)
        },
        secondary = {
            SecondaryButton(stringResource(R.string.not_the_same)) { other = true }
            if (last is Told.Refused) SecondaryButton(stringResource(R.string.another_code), onPress = another)
        },
        main = { MainPress(stringResource(R.string.try_again)) { tries++ } },
    ) {
        Section(null, listOfNotNull(about.hub?.let { stringResource(R.string.hub, it) }, stringResource(R.string.fleet, about.fleet)))
        Column(Modifier, Arrangement.spacedBy(4.dp)) {
            Text(stringResource(R.string.this_phones_key), style = LocalType.current.heading)
            Text(about.key, style = LocalType.current.figure)
        }
        Strip(stringResource(R.string.same_key_on_the_shops_page))
        Text(stringResource(R.string.waiting_for_the_shop, minutesAndSeconds(waited)), style = LocalType.current.text)
    }
}

/** The book can't be opened: why, what is safe, and trying again. */
@Composable
fun BookShut(why: String, again: () -> Unit) {
    ScreenFrame(
        header = { ScreenTitle("Sumpbook") },
        strips = { Strip(why, heavy = true) },
        main = { MainPress(stringResource(R.string.try_again), onPress = again) },
    ) {}
}

/** The title of a screen that is about no unit. */
@Composable
fun ScreenTitle(title: String) = Box(Modifier.fillMaxWidth().heightIn(56.dp), Alignment.CenterStart) {
    Text(title, Modifier.semantics { heading() }, style = LocalType.current.title)
}

/** One exchange at most. */
private const val EXCHANGE_MS = 10_000

/** Between two of them: somebody at the shop is looking at the same key just now. */
private const val BETWEEN_MS = 3_000L
