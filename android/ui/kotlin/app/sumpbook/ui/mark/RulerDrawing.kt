package app.sumpbook.ui.mark

import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.drawscope.DrawScope
import app.sumpbook.core.Nearer
import app.sumpbook.core.TaskRow
import app.sumpbook.ui.theme.Tokens
import java.time.LocalDate
import java.time.temporal.ChronoUnit

/**
 * One clock of a task. Shares are thousandths of the interval.
 *
 * @property used used so far, at most so many where they are counted or estimated; over 1000 past the post
 * @property least used at least: solid up to here, hatched from here on
 * @property comingFrom coming up begins here; none: not known on this phone
 * @property nearer it runs out first
 */
data class Clock(val used: Int, val nearer: Boolean, val least: Int? = null, val comingFrom: Int? = null)

/** When the hours run out, in thousandths of the calendar's interval; no [latest]: it cannot be told. */
data class RunsOut(val earliest: Int, val likely: Int, val latest: Int?)

/** The hours clock of a task. */
fun TaskRow.hoursClock(): Clock? =
    hoursUsedShare?.let { Clock(it.toInt(), nearer == Nearer.HOURS, hoursUsedLeastShare?.toInt(), hoursComingUpShare?.toInt()) }

/** The calendar clock of a task. */
fun TaskRow.daysClock(): Clock? = daysUsedShare?.let { Clock(it.toInt(), nearer == Nearer.CALENDAR, comingFrom = daysComingUpShare?.toInt()) }

/** Days as shares of the calendar's interval: the likely one is given, the others lie on the same scale. */
fun TaskRow.runsOut(): RunsOut? {
    val forecast = forecast ?: return null
    val likelyShare = forecast.likelyShare?.toInt() ?: return null
    val (used, left) = (daysUsedShare ?: return null) to (daysLeft ?: return null)
    // A day on the day it is due has no length to measure with: then only the likely day is drawn.
    val perDay = if (left == 0L) 0.0 else (1_000.0 - used) / left
    val likely = LocalDate.parse(forecast.likely)
    fun share(day: String) =
        likelyShare + (ChronoUnit.DAYS.between(likely, LocalDate.parse(day)) * perDay).toInt()
    return RunsOut(share(forecast.earliest), likelyShare, forecast.latest?.let(::share))
}

/** Share of the interval at which the drawing is cut. */
private const val CUT = 1_220

/** Draws from 16 above the hours track; [times] stretches x alone. */
internal fun DrawScope.ruler(hours: Clock?, days: Clock?, runsOut: RunsOut?, times: Float, tokens: Tokens) {
    val x = { share: Int -> (8f + 248f * share.coerceIn(0, CUT) / 1_000f) * times }
    val post = 256f * times
    hours?.let { track(it, if (it.nearer) 6f else 10f, x, times, tokens) }
    days?.let { track(it, if (it.nearer) 40f else 44f, x, times, tokens) }
    drawLine(tokens.ink, Offset(post, 2f), Offset(post, 62f), 4f)
    drawRect(tokens.ink, Offset(post, 2f), Size(14f, 10f))
    if (days != null && runsOut != null) forecast(runsOut, x, tokens)
}

private fun DrawScope.track(clock: Clock, y: Float, x: (Int) -> Float, times: Float, tokens: Tokens) {
    val tall = if (clock.nearer) 16f else 8f
    val (left, post) = x(0) to x(1_000)
    val used = x(clock.used.coerceAtMost(1_000))
    drawRect(tokens.sheet, Offset(left, y), Size(post - left, tall))
    val least = clock.least?.let { x(it.coerceAtMost(1_000)).coerceAtMost(used) }
    if (least != null && least < used) {
        hatch(rect(least, y, used, y + tall), Hatch.Bound, tokens.ink, tokens.sheet)
    }
    drawRect(tokens.ink, Offset(left, y), Size((least ?: used) - left, tall))
    val from = clock.comingFrom?.let { maxOf(x(it), used) }
    if (from != null) {
        // Strokes every 5, the last at the post.
        var at = post
        while (at >= from) {
            drawLine(tokens.rule, Offset(at, y), Offset(at, y + tall), 1.5f)
            at -= 5f * times
        }
    }
    drawRect(tokens.ink, Offset(left, y), Size(post - left, tall), style = line(1.5f))
    if (clock.used > 1_000) past(clock.used, post, y, tall, x, tokens)
    else if (clock.nearer) {
        drawPath(path("M${used - 8} ${y + tall + 9}H${used + 8}L$used ${y + tall}Z"), tokens.ink)
    }
}

/** What is past is never so little that it is not seen; where it is cut it ends in an arrow's tip. */
private fun DrawScope.past(used: Int, post: Float, y: Float, tall: Float, x: (Int) -> Float, tokens: Tokens) {
    val end = maxOf(x(used), post + 8f)
    val beyond = if (used > CUT) path("M$post ${y}H${end - 8}L$end ${y + tall / 2}L${end - 8} ${y + tall}H${post}Z")
    else rect(post, y, end, y + tall)
    hatch(beyond, Hatch.Stopped, tokens.stop, tokens.sheet)
    drawPath(beyond, tokens.stop, style = line(2f))
}

private fun DrawScope.forecast(span: RunsOut, x: (Int) -> Float, tokens: Tokens) {
    val y = 71f
    val end = span.latest?.takeIf { it <= CUT }
    val right = x(end ?: CUT)
    drawLine(tokens.ink, Offset(x(span.earliest), y), Offset(right, y), 2f)
    if (span.earliest <= CUT) drawLine(tokens.ink, Offset(x(span.earliest), y - 5), Offset(x(span.earliest), y + 5), 2f)
    if (end != null) drawLine(tokens.ink, Offset(right, y - 5), Offset(right, y + 5), 2f)
    else drawPath(path("M${right - 8} ${y - 5}L$right ${y}L${right - 8} ${y + 5}"), tokens.ink, style = line(2f))
    if (span.likely <= CUT) {
        drawCircle(tokens.paper, 5f, Offset(x(span.likely), y))
        drawCircle(tokens.ink, 5f, Offset(x(span.likely), y), style = line(2f))
    }
}

private fun rect(left: Float, top: Float, right: Float, bottom: Float): Path =
    Path().apply { addRect(Rect(left, top, right, bottom)) }
