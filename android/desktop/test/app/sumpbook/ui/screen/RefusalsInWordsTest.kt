package app.sumpbook.ui.screen

import androidx.compose.runtime.Composable
import androidx.compose.ui.test.ExperimentalTestApi
import app.sumpbook.core.DisabledReason
import app.sumpbook.core.DraftKind
import app.sumpbook.core.EnrolmentKind
import app.sumpbook.core.FileKind
import app.sumpbook.core.FleetHere
import app.sumpbook.core.KeyKind
import app.sumpbook.core.MissingSign
import app.sumpbook.core.Mix
import app.sumpbook.core.OnlineKind
import app.sumpbook.core.PhoneException
import app.sumpbook.core.PhoneInterface
import app.sumpbook.core.PhotoKind
import app.sumpbook.core.SlipKind
import app.sumpbook.core.StorageKind
import app.sumpbook.core.uniffiEnsureInitialized
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Refusal
import app.sumpbook.ui.desktop.DesktopFace
import app.sumpbook.ui.onScreen
import app.sumpbook.ui.words.OwnWay
import java.lang.reflect.Proxy
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** Everything the core can refuse, and every reason why a button waits, is a sentence in both languages. */
@OptIn(ExperimentalTestApi::class)
class RefusalsInWordsTest {
    private fun slip(kind: SlipKind) = PhoneException.Slip(
        kind,
        when (kind) {
            SlipKind.LENGTH -> "error-slip-length"
            SlipKind.MISTYPED -> "error-slip-mistyped"
            SlipKind.WRONG -> "error-slip-wrong-wait"
            SlipKind.WAIT -> "error-slip-wait"
            SlipKind.NOTHING_LOCKED -> "error-slip-nothing-locked"
        },
        30, "",
    )

    private fun photo(kind: PhotoKind) = PhoneException.Photo(
        kind,
        when (kind) {
            PhotoKind.NOT_A_PHOTO -> "error-not-a-photo"
            PhotoKind.NOT_A_SOUND -> "error-not-a-sound"
            PhotoKind.TOO_LONG -> "error-sound-too-long"
            PhotoKind.CUT -> "error-photo-cut"
            PhotoKind.TOO_LARGE -> "error-photo-too-large"
            PhotoKind.FULL -> "error-phone-full"
            PhotoKind.DAMAGED -> "error-photo-damaged"
            PhotoKind.FOLDER -> null
        },
        "",
    )

    /** Every kind there is, by name. */
    private val refusals: Map<String, PhoneException> = buildMap {
        fun add(name: String, why: PhoneException) = put("${why::class.java.simpleName} $name", why)
        for (paused in listOf(false, true)) add("paused $paused", PhoneException.Closed(paused))
        EnrolmentKind.entries.forEach { add(it.name, PhoneException.Enrolment(it, "Tern Hollow Water", "yard phone 3", null, "")) }
        KeyKind.entries.forEach { add(it.name, PhoneException.Key(it, "")) }
        StorageKind.entries.forEach { add(it.name, PhoneException.Storage(it, if (it == StorageKind.FULL) "error-phone-full" else null, "")) }
        PhotoKind.entries.forEach { add(it.name, photo(it)) }
        FileKind.entries.forEach { add(it.name, PhoneException.File(it, "")) }
        OnlineKind.entries.forEach { add(it.name, PhoneException.Online(it, null, null, null, null, 4u, "")) }
        for (status in listOf(401, 403)) add("$status", PhoneException.Online(OnlineKind.DECLINED, null, status.toUShort(), null, null, 4u, ""))
        for (key in listOf("error-code-ran-out", "error-code-used", "error-code-unknown")) add(key, PhoneException.Online(OnlineKind.DECLINED, key, 403u, null, null, 4u, ""))
        add("a full disk at the shop", PhoneException.Online(OnlineKind.DECLINED, "error-shop-disk-full", 507u, null, null, 4u, ""))
        add("no signal since", PhoneException.Online(OnlineKind.NO_WAY, "error-no-signal", null, null, "2026-10-20T16:48:00-06:00", 4u, ""))
        DraftKind.entries.forEach { add(it.name, PhoneException.Draft(it, "oil-level", "9", 8u, 2u, "")) }
        add("", PhoneException.Entry(""))
        SlipKind.entries.forEach { add(it.name, slip(it)) }
        add("", PhoneException.Argument("unit", ""))
        add("", PhoneException.Unexpected(""))
    }

    /** Some say the same on purpose: for a person they are one. */
    private val alike = setOf(setOf("Key KEYSTORE", "Key FILE"), setOf("Online DECLINED", "Online NOT_THE_ANSWER"), setOf("Argument ", "Unexpected "),
        setOf("Enrolment CODE_EXPIRED", "Online error-code-ran-out"), setOf("Enrolment CODE_USED", "Online error-code-used"))

    private fun told(language: String, of: Collection<PhoneException>): List<String> {
        val told = ArrayList<String>()
        onScreen { setContent { DesktopFace(OwnWay(language)) { of.forEach { Tell(it, told) } } } }
        return told
    }

    @Composable
    private fun Tell(why: PhoneException, told: MutableList<String>) {
        told += sentence(Refusal.of(why))
    }

    @Test
    fun `no kind is left out`() {
        val there = PhoneException::class.java.declaredClasses.filter { PhoneException::class.java.isAssignableFrom(it) }.map { it.simpleName }
        assertEquals(there.toSet(), refusals.values.map { it::class.java.simpleName }.toSet())
        assertEquals(12, there.size)
    }

    @Test
    fun `each says what happened, what is kept and what to do, in both languages`() {
        uniffiEnsureInitialized()
        val english = refusals.keys.zip(told("en", refusals.values)).toMap()
        val spanish = refusals.keys.zip(told("es", refusals.values)).toMap()
        assertEquals(refusals.size, english.size)
        for ((name, words) in english) {
            assertTrue(words.count { it == '.' } >= 2, "$name: $words")
            assertTrue(Regex("""\b([Nn]othing|kept|[Gg]o on|not looked at)\b""").containsMatchIn(words), "$name does not say what is kept: $words")
            assertTrue(words.substringBeforeLast('.').substringAfterLast(". ").substringBefore(' ').trimEnd(',', ':') in TO_DO, "$name does not say what to do: $words")
        }
        for ((name, words) in spanish) {
            assertTrue(words.count { it == '.' } >= 2, "$name: $words")
            assertTrue(Regex("""\b(nada|guardad[oa]s?|no se revisó)\b""", RegexOption.IGNORE_CASE).containsMatchIn(words), "$name does not say what is kept: $words")
            assertTrue(words != english[name], "$name stands in one language: $words")
        }
        for (language in listOf(english, spanish)) {
            val same = language.entries.groupBy({ it.value }, { it.key }).values.filter { it.size > 1 }.map { it.toSet() }.toSet()
            assertEquals(alike, same)
        }
    }

    @Test
    fun `each reason why a button waits is words`() {
        uniffiEnsureInitialized()
        val reasons = listOf(
            DisabledReason.MoreBelow(3u), DisabledReason.JustOpened(400u), DisabledReason.FigureMissing("oil-level"), DisabledReason.DrumNotRead,
            DisabledReason.DefectsNotSaid, DisabledReason.LevelNotGiven, DisabledReason.Running, DisabledReason.AlreadyTold, DisabledReason.NothingTyped,
        ) + MissingSign.entries.map { DisabledReason.SignMissing(it) } + Mix.entries.map { DisabledReason.OilMayNotMeet(it) }
        val there = DisabledReason::class.java.declaredClasses.filter { DisabledReason::class.java.isAssignableFrom(it) }.map { it.simpleName }
        assertEquals(there.toSet(), reasons.map { it::class.java.simpleName }.toSet())
        for (reason in reasons) {
            val (english, spanish) = listOf("en", "es").map { reader(it).whyNot(reason) }
            assertTrue(english.length > 5 && !Regex("""why-not|[{}]""").containsMatchIn(english), "$reason: $english")
            assertTrue(spanish.length > 5 && spanish != english, "$reason: $spanish")
        }
    }

    /** A reader that only speaks: no book is asked. */
    private fun reader(language: String): Reader {
        val nobody = Proxy.newProxyInstance(javaClass.classLoader, arrayOf(PhoneInterface::class.java)) { _, method, _ -> error("asked ${method.name}") } as PhoneInterface
        return Reader(nobody, FleetHere("Tern Hollow Water", "America/Denver", false, emptyList(), emptyList(), emptyList(), "911"), OwnWay(language), 0)
    }

    private companion object {
        val TO_DO = setOf(
            "Add", "Answer", "Ask", "Call", "Choose", "Close", "Do", "Give", "Go", "Look", "Make", "Open", "Read", "Record", "Say", "Start", "Take", "Tell", "Try",
            "Type", "Update", "Use", "Wait", "Hand",
        )
    }
}
