package app.sumpbook.ui.screen

import app.sumpbook.core.LeftHours
import app.sumpbook.core.Nearer
import app.sumpbook.core.TaskRow
import app.sumpbook.core.keyOfCalled
import app.sumpbook.core.keyOfStanding
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.words.decimal
import app.sumpbook.ui.words.hours

/** A task of the programme in words: its name, how it stands, each clock, what it waits for. */
data class TaskWords(val row: TaskRow, val name: String, val standing: String, val hours: String?, val calendar: String?, val more: List<String>) {
    /** All of it in one sentence. */
    val says: String get() = (listOfNotNull(name, standing, hours, calendar) + more).joinToString(". ")
}

/** A task's words. */
fun Reader.taskWords(task: TaskRow): TaskWords = TaskWords(
    row = task,
    name = wordsOr("task-${task.id}", task.id),
    standing = "${amount(task) ?: words(keyOfStanding(task.standing))}, ${nearer(task.nearer)}",
    hours = hoursClock(task),
    calendar = calendarClock(task),
    more = listOfNotNull(
        boundWords(task),
        forecast(task),
        task.called?.let { words(keyOfCalled(it.why)) },
        task.waiting?.let { words("task-waiting", "part" to it.part) },
        task.waiting?.promised?.let { words("task-promised", "day" to moments.day(it)) },
        if (task.enteredTwice.any { !it.settled }) words("task-entered-twice") else null,
        weightWords(task),
    ),
)

/** By how much the nearer clock is past its end; none: it is not. */
private fun Reader.amount(task: TaskRow): String? {
    val (hours, days) = task.hoursLeft to (task.daysLeft ?: 0)
    return when {
        task.nearer == Nearer.HOURS && hours is LeftHours.Past -> words("task-hours-past", "hours" to hours(hours.v1))
        task.nearer == Nearer.CALENDAR && days < 0 -> words("task-days-past", "days" to -days)
        else -> null
    }
}

private fun Reader.nearer(nearer: Nearer): String = when (nearer) {
    Nearer.HOURS -> words("nearer-hours")
    Nearer.CALENDAR -> words("nearer-calendar")
    Nearer.UNKNOWN -> words("nearer-unknown")
}

private fun Reader.hoursClock(task: TaskRow): String? {
    val left = when (val left = task.hoursLeft) {
        is LeftHours.Left -> words("task-hours-left", "hours" to hours(left.v1), "every" to hours(task.everyHours ?: 0))
        is LeftHours.Past -> words("task-hours-past", "hours" to hours(left.v1))
        null -> return null
    }
    return task.dueFigure?.let { "$left, ${words("task-due-at", "figure" to hours(it))}" } ?: left
}

private fun Reader.calendarClock(task: TaskRow): String? {
    val left = task.daysLeft ?: return null
    val words = if (left < 0) words("task-days-past", "days" to -left) else words("task-days-left", "days" to left)
    return task.lastGoodDay?.let { "$words, ${words("task-last-good-day", "day" to moments.day(it))}" } ?: words
}

private fun Reader.forecast(task: TaskRow): String? {
    val forecast = task.forecast ?: return if (task.nearer == Nearer.UNKNOWN) words("forecast-unknown") else null
    val likely = "likely" to moments.day(forecast.likely)
    val earliest = "earliest" to moments.day(forecast.earliest)
    val said = when (val latest = forecast.latest) {
        null -> words("forecast-open", likely, earliest)
        else -> words("forecast-likely", likely, earliest, "latest" to moments.day(latest))
    }
    return if (forecast.goneBy) "$said ${words("forecast-gone-by")}" else said
}

/** Hours that are counted or estimated, with their bounds; none where the meter says them. */
private fun Reader.boundWords(task: TaskRow): String? {
    val least = task.hoursLeft ?: return null
    val most = task.hoursLeftAtMost?.takeIf { it != least } ?: return null
    val likely = task.hoursLeftLikely
    val bounds = arrayOf("least" to signed(least), "most" to signed(most))
    return if (likely == null) words("hours-left-counted", *bounds) else words("hours-left-estimated", *bounds, "likely" to signed(likely))
}

/** Hours left; those past are below zero, so that bounds on both sides of the end are told apart. */
private fun signed(left: LeftHours): String = when (left) {
    is LeftHours.Left -> hours(left.v1)
    is LeftHours.Past -> hours(-left.v1)
}

/** What the site's dust does to the hours: what an hour counts now, and what that is on this unit's meter. */
private fun Reader.weightWords(task: TaskRow): String? {
    if (!task.countsWeighted) return null
    val meter = task.meterHoursLeft ?: return words("task-weighted")
    val (left, due) = task.hoursLeft to task.dueFigure
    val weighs = words("hours-weigh-now", "weight" to decimal(task.weight.toLong(), 2))
    if (meter !is LeftHours.Left || left !is LeftHours.Left || due == null) return weighs
    return "$weighs, ${words("hours-weighted", "left" to hours(left.v1), "meter" to hours(meter.v1), "due" to hours(due))}"
}
