package app.sumpbook.ui.desk

import app.sumpbook.core.FleetHere
import app.sumpbook.core.LockPart
import app.sumpbook.core.Main
import app.sumpbook.core.MainAct
import app.sumpbook.core.DisabledReason
import app.sumpbook.core.Glass
import app.sumpbook.core.PhoneInterface
import app.sumpbook.core.TextAsk
import app.sumpbook.core.TextValue
import app.sumpbook.core.hasText
import app.sumpbook.core.keyOfItem
import app.sumpbook.core.keyOfMain
import app.sumpbook.core.keyOfWhyNot
import app.sumpbook.core.keyOfWord
import app.sumpbook.core.text
import app.sumpbook.ui.words.Moments
import app.sumpbook.ui.words.OwnWay
import app.sumpbook.ui.words.hours
import java.time.Instant
import java.time.ZoneId

/**
 * The core as one screen reads it, on the core's own thread: its records, and its words in this person's language.
 * What leaves it is immutable.
 */
class Reader(val phone: PhoneInterface, val fleet: FleetHere, val way: OwnWay, val now: Long) {
    /** Moments on the yard's clock. */
    val moments = Moments(ZoneId.of(fleet.zone), Instant.ofEpochMilli(now), way.language)

    /** A text of the core's, by its key. A value is a count (Int, UInt, Long) or words. */
    fun words(key: String, vararg values: Pair<String, Any>): String = text(
        way.language,
        TextAsk(key, values.associate { (name, value) -> name to valueOf(value) }),
    )

    /** A text of the core's, where it has one; else the plain word: a shop's own item or place has no text. */
    fun wordsOr(key: String, plain: String): String = if (hasText(way.language, key)) words(key) else plain.replace('-', ' ')

    /** An item of the checklist, with its place: "Tire sides, left". */
    fun item(item: String, place: String? = null): String {
        val name = wordsOr(keyOfItem(item), item)
        return if (place == null) name else "$name, ${wordsOr("side-$place", place)}"
    }

    /** A word for what is wrong. */
    fun choice(word: String): String = wordsOr(keyOfWord(word), word)

    /** A part that can be locked: ROAD, AIR, an outlet by its name. */
    fun part(part: LockPart): String = when (part) {
        LockPart.Road -> words("part-road")
        LockPart.Air -> words("part-air")
        is LockPart.Outlet -> words("part-outlet", "name" to part.v1)
    }

    /** What the main button says. */
    fun label(main: Main, door: String): String {
        val act = main.act
        val key = keyOfMain(act)
        return when (act) {
            MainAct.StartPreTrip, is MainAct.TakeOver -> words(key, "door" to door)
            is MainAct.StillAsShown -> words(key, "percent" to act.percent.toInt())
            is MainAct.GoOn -> words(key, "stop" to (act.at?.toString() ?: act.stop.orEmpty()))
            is MainAct.AllOk -> words(key, "lines" to act.lines)
            is MainAct.OtherOk -> words(key, "lines" to act.lines)
            is MainAct.NextStop -> words(key, "stop" to act.at?.toString().orEmpty())
            is MainAct.GiveHours -> words(key, "figure" to hours(act.figure))
            is MainAct.YesItReads -> words(key, "figure" to hours(act.figure))
            is MainAct.KeepWithPhoto -> words(key, "figure" to hours(act.figure))
            else -> words(key)
        }
    }

    /** Why the main button does not take a tap yet. */
    fun whyNot(reason: DisabledReason): String {
        val key = keyOfWhyNot(reason)
        return when (reason) {
            is DisabledReason.MoreBelow -> words(key, "left" to reason.left)
            is DisabledReason.FigureMissing -> words(key, "item" to item(reason.item))
            else -> words(key)
        }
    }

    /** A level of the glass: "38 %", below view, above view. */
    fun glass(glass: Glass): String = when (glass) {
        is Glass.Percent -> "${glass.v1} %"
        Glass.BelowView -> words("level-below-view")
        Glass.AboveView -> words("level-above-view")
    }

    private fun valueOf(value: Any): TextValue = when (value) {
        is Int -> TextValue.Count(value.toLong())
        is UInt -> TextValue.Count(value.toLong())
        is Long -> TextValue.Count(value)
        else -> TextValue.Words(value.toString())
    }
}
