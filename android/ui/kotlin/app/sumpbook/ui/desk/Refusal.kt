package app.sumpbook.ui.desk

import app.sumpbook.core.DraftKind
import app.sumpbook.core.EnrolmentKind
import app.sumpbook.core.FileKind
import app.sumpbook.core.OnlineKind
import app.sumpbook.core.PhoneException
import app.sumpbook.core.TextAsk
import app.sumpbook.core.TextValue
import app.sumpbook.core.hasText
import app.sumpbook.core.text
import app.sumpbook.ui.words.Moments
import java.time.Instant
import java.time.OffsetDateTime

/** What the core refused, with those of its own words that the sentence about it is made with: looked up where it was refused, not where it is drawn. */
class Refusal private constructor(val why: PhoneException, private val said: Map<String, String>) {
    /** The core's words in a language; none where the shell has its own sentence. */
    fun said(language: String): String? = said[language]

    companion object {
        /** Asks the core for its words, as of [now]: not on the thread that draws. */
        fun of(why: PhoneException, now: Long = System.currentTimeMillis()): Refusal {
            val said = LANGUAGES.mapNotNull { language ->
                val asked = noSignal(why, now, language) ?: asked(why)
                asked?.takeIf { hasText(language, it.key) }?.let { language to text(language, it) }
            }
            return Refusal(why, said.toMap())
        }
    }
}

/** Since when there is no way to the shop, where that is known, by the yard's clock. */
private fun noSignal(why: PhoneException, now: Long, language: String): TextAsk? {
    val online = (why as? PhoneException.Online)?.takeIf { it.kind == OnlineKind.NO_WAY } ?: return null
    val key = online.textKey ?: return null
    val since = online.since ?: return null
    val moments = Moments(OffsetDateTime.parse(since).offset, Instant.ofEpochMilli(now), language)
    return TextAsk(
        key,
        mapOf(
            "since" to TextValue.Words(moments.at(since)),
            "count" to TextValue.Count(online.onPhone.toLong()),
        ),
    )
}

private fun asked(why: PhoneException): TextAsk? = when (why) {
    is PhoneException.Enrolment -> if (why.kind == EnrolmentKind.CODE_EXPIRED) counting("error-code-ran-out", "minutes", CODE_MINUTES) else null
    is PhoneException.Photo -> why.textKey?.let { TextAsk(it, emptyMap()) }
    is PhoneException.File -> if (why.kind == FileKind.OTHER_FLEET) TextAsk("error-other-fleet", emptyMap()) else null
    is PhoneException.Online -> if (why.kind == OnlineKind.OTHER_KEY) TextAsk("error-other-shop", emptyMap()) else ofHub(why)
    is PhoneException.Draft -> when (why.kind) {
        DraftKind.NEWER -> TextAsk("error-draft-newer", emptyMap())
        DraftKind.FIGURE_MISSING -> why.item?.let { TextAsk("item-$it", emptyMap()) }
        else -> null
    }
    is PhoneException.Slip -> counting(why.textKey, "seconds", why.waitS)
    else -> null
}

/** The hub's answer. */
private fun ofHub(why: PhoneException.Online): TextAsk? =
    why.textKey?.takeIf { why.kind == OnlineKind.DECLINED || why.kind == OnlineKind.NOT_THE_ANSWER }?.let { counting(it, "minutes", CODE_MINUTES) }

private fun counting(key: String, name: String, count: Long) = TextAsk(key, mapOf(name to TextValue.Count(count)))

/** How long a code of the shop's holds. */
private const val CODE_MINUTES = 15L

/** The languages the app speaks. */
internal val LANGUAGES = listOf("en", "es")
