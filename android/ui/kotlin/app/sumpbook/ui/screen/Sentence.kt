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
import app.sumpbook.core.PhotoKind
import app.sumpbook.core.StorageKind
import app.sumpbook.ui.desk.Refusal
import app.sumpbook.ui.words.LocalOwnWay

/** What was refused, for a person: what happened, what is kept, what to do. */
@Composable
fun sentence(refusal: Refusal): String {
    val said = refusal.said(LocalOwnWay.current.language)
    return when (val why = refusal.why) {
        is PhoneException.Closed -> stringResource(if (why.paused) R.string.error_paused else R.string.error_closed)
        is PhoneException.Enrolment -> said ?: enrolment(why)
        is PhoneException.Key -> key(why.kind)
        is PhoneException.Storage -> storage(why.kind)
        is PhoneException.Photo -> said ?: stringResource(if (why.kind == PhotoKind.FOLDER) R.string.error_photo_folder else R.string.error_photo)
        is PhoneException.File -> said ?: file(why.kind)
        is PhoneException.Online -> said ?: online(why)
        is PhoneException.Draft -> draft(why, said)
        is PhoneException.Entry -> stringResource(R.string.error_entry)
        is PhoneException.Slip -> said ?: stringResource(R.string.error_slip)
        is PhoneException.Argument, is PhoneException.Unexpected -> stringResource(R.string.error_unexpected)
    }
}

@Composable
private fun enrolment(why: PhoneException.Enrolment): String = when (why.kind) {
    EnrolmentKind.CODE_EXPIRED -> stringResource(R.string.error_code_not_taken)
    EnrolmentKind.ALREADY_ENROLLED -> stringResource(R.string.error_already_enrolled, why.fleet.orEmpty(), why.device.orEmpty())
    EnrolmentKind.CODE_USED -> stringResource(R.string.error_code_used)
    EnrolmentKind.NAME -> stringResource(R.string.error_phone_name)
    EnrolmentKind.OTHER_FLEETS_FOLDER -> stringResource(R.string.error_other_folder)
    EnrolmentKind.NOT_ENROLLED -> stringResource(R.string.error_not_enrolled)
    EnrolmentKind.NOT_AN_INVITATION -> stringResource(R.string.error_code_wrong)
    EnrolmentKind.DAMAGED -> stringResource(R.string.error_code_mistyped)
    EnrolmentKind.CODE_UNKNOWN -> stringResource(R.string.error_code_unknown)
}

@Composable
private fun key(kind: KeyKind): String = stringResource(
    when (kind) {
        KeyKind.GONE -> R.string.error_key_gone
        KeyKind.READABLE_BY_OTHERS -> R.string.error_key_readable
        KeyKind.KEYSTORE, KeyKind.FILE -> R.string.error_key
    },
)

@Composable
private fun storage(kind: StorageKind): String = stringResource(
    when (kind) {
        StorageKind.FULL -> R.string.error_full
        StorageKind.READ_ONLY -> R.string.error_read_only
        StorageKind.BUSY -> R.string.error_busy
        StorageKind.DAMAGED -> R.string.error_damaged
        StorageKind.NEWER_VERSION -> R.string.error_newer
        StorageKind.OTHER -> R.string.error_storage
    },
)

@Composable
private fun file(kind: FileKind): String = when (kind) {
    FileKind.NOT_A_FILE -> stringResource(R.string.error_not_a_file)
    FileKind.OTHER_SHOP -> stringResource(R.string.error_file_other_shop)
    FileKind.NOT_MADE -> stringResource(R.string.error_file)
    FileKind.OTHER, FileKind.OTHER_FLEET -> stringResource(R.string.error_file_other)
}

@Composable
private fun online(why: PhoneException.Online): String = when (why.kind) {
    OnlineKind.NO_HUB -> stringResource(R.string.error_no_hub)
    OnlineKind.NO_WAY -> stringResource(R.string.error_no_signal, why.onPhone.toInt())
    OnlineKind.UNDER_WAY -> stringResource(R.string.error_under_way)
    OnlineKind.DECLINED, OnlineKind.NOT_THE_ANSWER, OnlineKind.OTHER_KEY -> declined(why.status?.toInt())
}

/** What a hub says no to, by its status of HTTP. */
@Composable
private fun declined(status: Int?): String = stringResource(
    when (status) {
        401 -> R.string.error_not_known
        403 -> R.string.error_code_not_taken
        else -> R.string.error_hub_declined
    },
)

@Composable
private fun draft(why: PhoneException.Draft, said: String?): String = when (why.kind) {
    DraftKind.NEWER -> said ?: stringResource(R.string.error_newer)
    DraftKind.STOP_OPEN -> stringResource(R.string.error_stop_open, why.at?.toString() ?: why.stop.orEmpty())
    DraftKind.NOT_THERE -> stringResource(R.string.error_draft_gone)
    DraftKind.FIGURE_MISSING -> stringResource(R.string.error_figure_missing, said ?: why.item.orEmpty().replace('-', ' '))
    DraftKind.ANSWER -> stringResource(R.string.error_draft)
    DraftKind.NOTHING_TOGETHER -> stringResource(R.string.error_nothing_together)
    DraftKind.NOTHING_ANSWERED -> stringResource(R.string.error_nothing_answered)
    DraftKind.GATE_CLOSED -> stringResource(R.string.error_gate_closed)
    DraftKind.NO_VOLUME -> stringResource(R.string.error_no_volume)
    DraftKind.NOTHING_POURED -> stringResource(R.string.error_nothing_poured)
    DraftKind.CAP_OPEN -> stringResource(R.string.error_cap_open)
    DraftKind.DEFECTS_NOT_SAID -> stringResource(R.string.error_defects_not_said)
}
