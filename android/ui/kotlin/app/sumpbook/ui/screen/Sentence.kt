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
import app.sumpbook.core.hasText
import app.sumpbook.core.StorageKind
import app.sumpbook.core.TextAsk
import app.sumpbook.core.TextValue
import app.sumpbook.core.text
import app.sumpbook.ui.words.LocalOwnWay

/** What was refused, for a person: what happened, what is kept, what to do. */
@Composable
fun sentence(why: PhoneException): String = when (why) {
    is PhoneException.Closed -> stringResource(if (why.paused) R.string.error_paused else R.string.error_closed)
    is PhoneException.Enrolment -> enrolment(why)
    is PhoneException.Key -> key(why.kind)
    is PhoneException.Storage -> storage(why.kind)
    is PhoneException.Photo -> photo(why)
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
private fun photo(why: PhoneException.Photo): String = why.textKey?.let { ofKey(it) } ?: stringResource(
    if (why.kind == PhotoKind.FOLDER) R.string.error_photo_folder else R.string.error_photo,
)

@Composable
private fun file(kind: FileKind): String = when (kind) {
    FileKind.OTHER_FLEET -> ofKey("error-other-fleet")
    FileKind.NOT_A_FILE -> stringResource(R.string.error_not_a_file)
    FileKind.OTHER_SHOP -> stringResource(R.string.error_file_other_shop)
    FileKind.NOT_MADE -> stringResource(R.string.error_file)
    FileKind.OTHER -> stringResource(R.string.error_file_other)
}

@Composable
private fun online(why: PhoneException.Online): String = when (why.kind) {
    OnlineKind.NO_HUB -> stringResource(R.string.error_no_hub)
    OnlineKind.NO_WAY -> stringResource(R.string.error_no_signal, why.onPhone.toInt())
    OnlineKind.OTHER_KEY -> ofKey("error-other-shop")
    OnlineKind.UNDER_WAY -> stringResource(R.string.error_under_way)
    OnlineKind.DECLINED, OnlineKind.NOT_THE_ANSWER -> why.textKey?.let { ofKey(it, "minutes" to TextValue.Count(CODE_MINUTES)) } ?: declined(why.status?.toInt())
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
private fun draft(why: PhoneException.Draft): String = when (why.kind) {
    DraftKind.NEWER -> ofKey("error-draft-newer")
    DraftKind.STOP_OPEN -> stringResource(R.string.error_stop_open, why.stop.orEmpty())
    DraftKind.NOT_THERE -> stringResource(R.string.error_draft_gone)
    DraftKind.FIGURE_MISSING -> stringResource(R.string.error_figure_missing, why.item?.let { ofKeyOr("item-$it", it) }.orEmpty())
    DraftKind.ANSWER -> stringResource(R.string.error_draft)
    DraftKind.NOTHING_TOGETHER -> stringResource(R.string.error_nothing_together)
    DraftKind.NOTHING_ANSWERED -> stringResource(R.string.error_nothing_answered)
    DraftKind.GATE_CLOSED -> stringResource(R.string.error_gate_closed)
    DraftKind.NO_VOLUME -> stringResource(R.string.error_no_volume)
    DraftKind.NOTHING_POURED -> stringResource(R.string.error_nothing_poured)
    DraftKind.CAP_OPEN -> stringResource(R.string.error_cap_open)
    DraftKind.DEFECTS_NOT_SAID -> stringResource(R.string.error_defects_not_said)
}

/** The core's words where it has some; a shop's own item has none. */
@Composable
private fun ofKeyOr(key: String, plain: String): String =
    if (hasText(LocalOwnWay.current.language, key)) ofKey(key) else plain.replace('-', ' ')

/** How long a code of the shop's holds. */
private const val CODE_MINUTES = 15L
