package app.sumpbook.ui.screen

import androidx.compose.runtime.Composable
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.DraftKind
import app.sumpbook.core.EnrolmentKind
import app.sumpbook.core.FileKind
import app.sumpbook.core.KeyKind
import app.sumpbook.core.OnlineKind
import app.sumpbook.core.PhoneException
import app.sumpbook.core.StorageKind
import app.sumpbook.core.TextAsk
import app.sumpbook.core.TextValue
import app.sumpbook.core.text
import app.sumpbook.ui.words.LocalOwnWay

/** What was refused, for a person: what happened, what is kept, what to do. */
@Composable
fun sentence(why: PhoneException): String = when (why) {
    is PhoneException.Closed -> stringResource(R.string.error_closed)
    is PhoneException.Enrolment -> enrolment(why)
    is PhoneException.Key -> stringResource(if (why.kind == KeyKind.GONE) R.string.error_key_gone else R.string.error_key)
    is PhoneException.Storage -> why.textKey?.let { ofKey(it) } ?: storage(why.kind)
    is PhoneException.Photo -> why.textKey?.let { ofKey(it) } ?: stringResource(R.string.error_photo)
    is PhoneException.File -> file(why.kind)
    is PhoneException.Online -> online(why)
    is PhoneException.Draft -> draft(why)
    is PhoneException.Entry -> stringResource(R.string.error_entry)
    is PhoneException.Slip -> ofKey(why.textKey, "seconds" to TextValue.Count(why.waitS))
    is PhoneException.Argument, is PhoneException.Unexpected -> stringResource(R.string.error_unexpected)
}

/** The core's own sentence. */
@Composable
private fun ofKey(key: String, vararg values: Pair<String, TextValue>): String =
    text(LocalOwnWay.current.language, TextAsk(key, values.toMap()))

@Composable
private fun enrolment(why: PhoneException.Enrolment): String = when (why.kind) {
    EnrolmentKind.CODE_EXPIRED -> ofKey("error-code-ran-out", "minutes" to TextValue.Count(CODE_MINUTES))
    EnrolmentKind.ALREADY_ENROLLED -> stringResource(R.string.error_already_enrolled, why.fleet.orEmpty(), why.device.orEmpty())
    EnrolmentKind.CODE_USED -> stringResource(R.string.error_code_used)
    EnrolmentKind.NAME -> stringResource(R.string.error_phone_name)
    EnrolmentKind.OTHER_FLEETS_FOLDER -> stringResource(R.string.error_other_folder)
    EnrolmentKind.NOT_ENROLLED -> stringResource(R.string.error_not_enrolled)
    EnrolmentKind.NOT_AN_INVITATION, EnrolmentKind.DAMAGED, EnrolmentKind.CODE_UNKNOWN -> stringResource(R.string.error_code_wrong)
}

@Composable
private fun storage(kind: StorageKind): String = stringResource(
    when (kind) {
        StorageKind.FULL -> R.string.error_full
        StorageKind.READ_ONLY -> R.string.error_read_only
        StorageKind.BUSY -> R.string.error_busy
        StorageKind.DAMAGED, StorageKind.NEWER_VERSION, StorageKind.OTHER -> R.string.error_storage
    },
)

@Composable
private fun file(kind: FileKind): String = when (kind) {
    FileKind.OTHER_FLEET -> ofKey("error-other-fleet")
    FileKind.NOT_A_FILE -> stringResource(R.string.error_not_a_file)
    FileKind.OTHER_SHOP -> ofKey("error-other-shop")
    FileKind.NOT_MADE, FileKind.OTHER -> stringResource(R.string.error_file)
}

@Composable
private fun online(why: PhoneException.Online): String = when (why.kind) {
    OnlineKind.NO_HUB -> stringResource(R.string.error_no_hub)
    OnlineKind.NO_WAY -> stringResource(R.string.error_no_signal, why.onPhone.toInt())
    OnlineKind.OTHER_KEY -> ofKey("error-other-shop")
    OnlineKind.UNDER_WAY -> stringResource(R.string.error_under_way)
    OnlineKind.DECLINED, OnlineKind.NOT_THE_ANSWER -> why.textKey?.let { ofKey(it) } ?: stringResource(R.string.error_hub_declined)
}

@Composable
private fun draft(why: PhoneException.Draft): String = when (why.kind) {
    DraftKind.NEWER -> ofKey("error-draft-newer")
    DraftKind.STOP_OPEN -> stringResource(R.string.error_stop_open, why.stop.orEmpty())
    DraftKind.NOT_THERE -> stringResource(R.string.error_draft_gone)
    else -> stringResource(R.string.error_draft)
}

/** How long a code of the shop's holds. */
private const val CODE_MINUTES = 15L
