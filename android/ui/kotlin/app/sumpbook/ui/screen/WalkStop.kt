package app.sumpbook.ui.screen

import androidx.compose.foundation.rememberScrollState
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableIntStateOf
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import app.sumpbook.R
import app.sumpbook.core.AnswerKind
import app.sumpbook.core.DisabledReason
import app.sumpbook.core.ItemFigure
import app.sumpbook.core.MainAct
import app.sumpbook.ui.control.Line
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Act
import app.sumpbook.ui.desk.Desk
import app.sumpbook.ui.desk.LocalDesk
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.frame.Seen
import app.sumpbook.ui.frame.rememberSeen
import app.sumpbook.ui.frame.seenAs
import app.sumpbook.ui.place.BackStack
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.words.LocalOwnWay
import kotlinx.coroutines.delay
import kotlinx.coroutines.launch

/** One stop of a walk as it is open now: what every kind of stop works with. */
@Stable
class OpenStop(val unit: String, val draft: String, val view: StopView, val rows: Seen, val act: Act, val back: BackStack, private val openMs: () -> Long) {
    private val label get() = view.label

    /** For how long its lines have been on the screen. */
    fun onScreenMs(): UInt = openMs().toUInt()

    /** The one tap: what is open here is OK, and on to the next stop; [before] is kept with it, and first. */
    fun okTogether(before: Reader.() -> Unit = {}) {
        val onScreen = onScreenMs()
        act.now({
            before()
            if (phone.stop(draft, label, rows.whole.toList(), onScreen)?.main?.act !is MainAct.NextStop) phone.okTogether(draft, label, onScreen)
            afterStop(draft, label)
        }, ::goOnTo)
    }

    /** Answers a line by a call of its own, then goes on when it was the last. */
    fun answerThenGoOn(call: Reader.() -> Unit) {
        act.now({
            call()
            afterStop(draft, label)
        }, ::goOnTo)
    }

    /** A figure that was measured: kept, or asked for as a defect where the core says that it is over its limit. */
    fun measured(line: LineWords, figure: ItemFigure, onScreenMs: UInt) {
        val answer = okWith(line.row, figure, onScreenMs)
        act.now({
            val over = phone.rulesSaid(unit, answer).over
            if (!over) phone.answerLine(draft, answer)
            over to if (over) null else afterStop(draft, label)
        }) { (over, next) ->
            if (over) back.go(Place.Defect(unit, draft, label, line.row.id, lineOf(figure))) else goOnTo(next)
        }
    }

    /** Opens a line's defect: as near as its OK. */
    fun defect(line: LineWords) = back.go(Place.Defect(unit, draft, label, line.row.id))

    private fun goOnTo(next: MainAct.NextStop?) {
        if (next == null) return
        val stop = next.stop
        // The way back leads from stop to stop, answers kept.
        back.go(if (stop == null) Place.Sign(unit, draft) else Place.Stop(unit, draft, stop))
    }
}

/** One stop of the walk: nothing is answered before it was seen, and a defect is as near as an OK. */
@Composable
fun WalkStop(unit: String, draft: String, stop: String) {
    val desk = LocalDesk.current
    val opened = remember { desk.handset.ticks() }
    val openMs = { desk.handset.ticks() - opened }
    val rows = rememberSeen(rememberScrollState())
    var again by remember { mutableIntStateOf(0) }
    val shown by seen(draft, stop, rows.whole, again) { stopView(unit, draft, stop, rows.whole, openMs()) }
    val told = shown ?: return
    val view = (told as? Told.Got)?.it
    val act = rememberAct()
    val back = LocalBackStack.current
    Reached(desk, draft, view)
    // A bounce of the tap before must not answer this stop.
    val left = (view?.record?.main?.whyNot as? DisabledReason.JustOpened)?.leftMs
    LaunchedEffect(left, again) {
        if (left != null) {
            delay(left.toLong())
            again++
        }
    }
    if (view == null) {
        Refused((told as? Told.Refused)?.let { sentence(it.why) } ?: stringResource(R.string.no_stop_here)) { back.back() }
        return
    }
    val open = remember(view, act) { OpenStop(unit, draft, view, rows, act, back, openMs) }
    when (view.kind) {
        StopKind.LINES -> LinesStop(open)
        StopKind.HOURS -> HoursStop(open)
        StopKind.DROP -> DropStop(open)
        StopKind.BUILD_UP -> BuildUpStop(open)
        StopKind.GLASS -> GlassStop(open)
    }
}

/** Tells the core that a stop was opened, once, so that the walk opens here again. */
@Composable
private fun Reached(desk: Desk, draft: String, view: StopView?) {
    val way = LocalOwnWay.current
    val label = view?.label
    LaunchedEffect(draft, label) {
        if (label != null) {
            desk.walks.begins(draft)
            desk.ask(way) { phone.reachStop(draft, label) }
        }
    }
}

/** A screen that has nothing but why it has nothing. */
@Composable
fun Refused(why: String, goBack: () -> Unit) {
    ScreenFrame(
        header = { DoorHeader("", null, goBack = goBack) },
        strips = { Strip(why) },
        main = { MainPress(stringResource(R.string.back), onPress = goBack) },
    ) {}
}

/** The lines of a stop, and the one tap for what is open. */
@Composable
private fun LinesStop(open: OpenStop) {
    val view = open.view
    StopFrame(open, { MainOfStop(open) }) { hints -> view.lines.forEach { LineOf(it, open, hints) } }
}

/** The main button of a stop: it answers, or turns to the lines that were not seen yet. */
@Composable
fun MainOfStop(open: OpenStop, before: Reader.() -> Unit = {}) {
    val scope = rememberCoroutineScope()
    val view = open.view
    val more = view.record.main.whyNot is DisabledReason.MoreBelow
    // What is missing is what it says: "3 more below".
    val words = if (more) view.whyNot ?: view.main else view.main
    val above = view.record.main.whyNot is DisabledReason.FigureMissing
    MainPress(words, view.whyNot, whyAbove = above, onEarly = if (more) ({ scope.launch { open.rows.turn() } }) else null) { open.okTogether(before) }
}

/** A line: all of it is the door to its defect. */
@Composable
fun LineOf(line: LineWords, open: OpenStop, hints: Boolean) {
    val help = listOfNotNull(line.note, if (hints) line.look else line.ok).joinToString("\n")
    val answer = line.row.answer?.answer
    Line(
        line.name,
        Modifier.seenAs(line.row.id, open.rows),
        under = help,
        said = line.said,
        defect = answer == AnswerKind.DEFECT,
    ) { open.defect(line) }
}

/** The frame of every stop: the walk in its header, what the engine is doing, how to look. */
@Composable
fun StopFrame(open: OpenStop, main: @Composable () -> Unit, secondary: (@Composable () -> Unit)? = null, content: @Composable (Boolean) -> Unit) {
    val view = open.view
    var asked by remember { mutableStateOf<Boolean?>(null) }
    // Somebody's first walks say how to look, and so does a stop of few lines, which has room for it; else a tap on the header.
    val hints = asked ?: (view.record.hints || (!view.isFull && view.kind != StopKind.GLASS && view.kind != StopKind.HOURS))
    ScreenFrame(
        header = { WalkHeader(view, hints) { asked = !hints } },
        strips = {
            open.act.refused?.let { Strip(sentence(it)) }
            if (open.back.closedAt == view.label) Strip(stringResource(R.string.closed_at_stop, view.record.index.toString()))
            // It does not call: it is the same at every stop, and what is looked at comes first.
            view.locked.forEach { Strip(it, heavy = true, small = true, calls = false) }
            Strip(view.strip, small = true)
            view.together.forEach { Strip(it, small = true) }
        },
        secondary = secondary,
        main = main,
        scroll = open.rows.scroll,
        seen = open.rows,
    ) {
        // The glass keeps its steps in the frame: what is before any cap stands after them.
        CautionsAndLines(view.cautions, open.rows.scroll, first = hints && view.kind != StopKind.GLASS, last = view.kind == StopKind.GLASS) { content(hints) }
    }
}
