package app.sumpbook.ui.words

import java.time.Instant
import java.time.LocalDate
import java.time.OffsetDateTime
import java.time.ZoneId
import java.time.ZonedDateTime
import java.time.format.DateTimeFormatter
import java.time.temporal.ChronoUnit
import java.util.Locale

/** Moments as the yard's clock has them, whatever zone the phone is in. */
class Moments(private val zone: ZoneId, private val now: Instant, language: String) {
    private val locale = Locale.forLanguageTag(language)
    private val time = DateTimeFormatter.ofPattern("HH:mm", locale)
    private val weekday = DateTimeFormatter.ofPattern("EEE", locale)
    private val dayAndMonth = DateTimeFormatter.ofPattern("EEE d MMM", locale)
    private val withYear = DateTimeFormatter.ofPattern("EEE d MMM yyyy", locale)

    /** "07:58" today, "Tue 16:48" within the week, else "Tue 20 Oct 16:48". */
    fun at(stamp: String): String {
        val there = there(stamp)
        val day = there.toLocalDate()
        return if (day == today()) time.format(there) else "${near(day)} ${time.format(there)}"
    }

    /** The same with its day in any case: "Tue 14:02". */
    fun dayAndTime(stamp: String): String = "${dayOf(stamp)} ${time(stamp)}"

    /** The time now. */
    fun timeNow(): String = time.format(now.atZone(zone))

    /** Today: "Mon 19 Oct". */
    fun dayNow(): String = far(today())

    /** The number of today in its month. */
    fun dayNumber(): Int = today().dayOfMonth

    /** The time alone. */
    fun time(stamp: String): String = time.format(there(stamp))

    /** The time of a minute of the day: 420 is "07:00". */
    fun minute(of: Int): String = "%02d:%02d".format(Locale.ROOT, of / 60, of % 60)

    /** The day of a moment. */
    fun dayOf(stamp: String): String = near(there(stamp).toLocalDate())

    /** A day by its date: "Tue" within the week, else "Tue 20 Oct", with the year when it is another. */
    fun day(date: String): String = far(LocalDate.parse(date))

    /** The moment so many milliseconds after 1970. */
    fun atMs(ms: Long): String = at(Instant.ofEpochMilli(ms).toString())

    private fun there(stamp: String): ZonedDateTime = OffsetDateTime.parse(stamp).atZoneSameInstant(zone)

    private fun today(): LocalDate = now.atZone(zone).toLocalDate()

    private fun near(day: LocalDate): String {
        val ago = ChronoUnit.DAYS.between(day, today())
        return if (ago in 0..6) plain(weekday.format(day)) else far(day)
    }

    private fun far(day: LocalDate): String =
        plain((if (day.year == today().year) dayAndMonth else withYear).format(day))

    /** Some calendars end a short name with a period, some don't. */
    private fun plain(text: String): String = text.replace(".", "")
}
