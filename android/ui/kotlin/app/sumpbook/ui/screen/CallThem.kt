package app.sumpbook.ui.screen

import androidx.compose.runtime.Composable
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.OnCall
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.LocalSettings

/** Whom the shop says to call, each by one tap; where it says nobody, the number this phone is set to. */
@Composable
fun CallThem(onCall: List<OnCall>) {
    val handset = LocalDesk.current.handset
    val own = LocalSettings.current?.now?.value?.shopNumber.orEmpty()
    onCall.forEach { SecondaryButton(stringResource(R.string.call_somebody, it.name)) { handset.call(it.number) } }
    if (onCall.isEmpty() && own.isNotEmpty()) SecondaryButton(stringResource(R.string.call_the_shop)) { handset.call(own) }
}

/** The same to be read: each name with its number. */
@Composable
fun onCallNumbers(onCall: List<OnCall>): List<String> {
    val own = LocalSettings.current?.now?.value?.shopNumber.orEmpty()
    return if (onCall.isEmpty() && own.isNotEmpty()) listOf(own) else onCall.map { "${it.name} ${it.number}" }
}
