package app.sumpbook.ui.screen

import androidx.compose.foundation.background
import androidx.compose.foundation.border
import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.FlowRow
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.res.stringResource
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import app.sumpbook.R
import app.sumpbook.core.MainAct
import app.sumpbook.core.OnCall
import app.sumpbook.core.TodayRow
import app.sumpbook.core.TodayScreen
import app.sumpbook.ui.control.Gap
import app.sumpbook.ui.control.SecondaryButton
import app.sumpbook.ui.control.Strip
import app.sumpbook.ui.desk.Reader
import app.sumpbook.ui.desk.Told
import app.sumpbook.ui.desk.rememberAct
import app.sumpbook.ui.desk.seen
import app.sumpbook.ui.frame.MainPress
import app.sumpbook.ui.frame.ScreenFrame
import app.sumpbook.ui.mark.PairLook
import app.sumpbook.ui.place.LocalBackStack
import app.sumpbook.ui.place.Place
import app.sumpbook.ui.place.Signer
import app.sumpbook.ui.theme.LocalTokens
import app.sumpbook.ui.theme.LocalType

/** A unit's card, in words. */
data class UnitCard(val row: TodayRow, val parts: List<PartWords>, val preTrip: String, val expected: String?, val main: String) {
    /** Something of it is locked: whom to call stands with it. */
    val locked: Boolean get() = parts.any { it.locked }
}

/** Today, with its words. */
data class TodayView(val record: TodayScreen, val day: String, val news: List<String>, val counts: String?, val cards: List<UnitCard>, val becameTitle: String, val became: List<BecameWords>, val left: WalkLeft?, val salvaged: String?, val onCall: List<OnCall>)

/** Today's units as this person's: their own first, and all of them while none is. */
fun Reader.todayView(person: String): TodayView {
    val record = phone.today(person)
    val own = record.units.filter { it.mine }.ifEmpty { record.units.take(FEW) }
    return TodayView(
        record = record,
        day = moments.day(record.day),
        news = newsWords(record.news),
        counts = if (record.counts.onPhone > 0u) words("counts-on-phone", "count" to record.counts.onPhone) else null,
        cards = own.map(::card),
        becameTitle = words("became-title"),
        became = record.became.map(::becameWords),
        left = walkLeft(person),
        salvaged = phone.about().salvaged?.let { words("error-book-damaged", "kept" to it.saved.toString(), "all" to it.held.toString()) },
        onCall = fleet.onCall,
    )
}

/** How many units stand here while this person has none of their own. */
private const val FEW = 12

private fun Reader.card(row: TodayRow) = UnitCard(
    row = row,
    parts = roadAirWords(row.roadAir),
    preTrip = preTripWords(row.preTrip),
    expected = row.expectedMinute?.let { words("expected-out", "when" to moments.minute(it.toInt())) },
    main = label(row.main, row.door),
)

/** May I take it, and where was I. */
@Composable
fun Today(signer: Signer) {
    val shown by seen(signer.person) { todayView(signer.person) }
    val told = shown ?: return
    val view = (told as? Told.Got)?.it
    val back = LocalBackStack.current
    val act = rememberAct()
    val leaving = rememberLeaving()
    val first = view?.cards?.firstOrNull()
    ScreenFrame(
        header = { TodayHeader(view?.record?.person.orEmpty(), view?.day.orEmpty()) { back.go(Place.WhoSigns()) } },
        strips = {
            if (told is Told.Refused) Strip(sentence(told.why))
            act.refused?.let { Strip(sentence(it), heavy = true) }
            view?.salvaged?.let { Strip(it, heavy = true) }
            LeavingStrip(leaving, view?.left)
            view?.news?.forEach { Strip(it) }
            view?.counts?.let { Strip(it) }
            val unreadable = view?.record?.unreadableDrafts?.toInt() ?: 0
            if (unreadable > 0) Strip(stringResource(R.string.unreadable_drafts))
        },
        secondary = {
            SecondaryButton(stringResource(R.string.another_unit)) { back.go(Place.AnotherUnit()) }
            SecondaryButton(stringResource(R.string.where_it_is)) { back.go(Place.WhereItIs()) }
            SecondaryButton(stringResource(R.string.settings)) { back.go(Place.Settings()) }
        },
        main = first?.let { card ->
            { MainPress(card.main) { goOn(act, back, signer, card.row.id, card.row.main.act) } }
        },
    ) {
        if (view != null && view.cards.isEmpty()) Text(stringResource(R.string.no_unit_yet))
        view?.cards?.forEach {
            Card(it, view.record.news.old, view.onCall) { leaving.to(it.row.id, view.left) { back.go(Place.Unit(it.row.id)) } }
            if (it.locked) FlowRow(Modifier.fillMaxWidth(), Arrangement.spacedBy(Gap), Arrangement.spacedBy(Gap)) { CallThem(view.onCall) }
        }
        if (view != null) Became(view.becameTitle, view.became) { unit -> leaving.to(unit, view.left) { back.go(Place.Unit(unit)) } }
    }
}

/** Who signs, and the day: below the name where it leaves no room beside it. */
@Composable
internal fun TodayHeader(person: String, day: String, switch: () -> Unit) {
    FlowRow(
        Modifier.fillMaxWidth().heightIn(56.dp).clickable(role = Role.Button, onClick = switch),
        Arrangement.SpaceBetween,
        itemVerticalAlignment = Alignment.CenterVertically,
    ) {
        Text(person, Modifier.semantics { heading() }, style = LocalType.current.heading)
        Text(day, style = LocalType.current.text)
    }
}

@Composable
private fun Card(card: UnitCard, old: Boolean, onCall: List<OnCall>, open: () -> Unit) {
    val tokens = LocalTokens.current
    Column(
        Modifier.fillMaxWidth().background(tokens.sheet).border(2.dp, tokens.rule)
            .clickable(role = Role.Button, onClick = open).padding(12.dp),
        Arrangement.spacedBy(4.dp),
    ) {
        Text(card.row.door, style = LocalType.current.door)
        RoadAirPart(PairLook.of(card.row.roadAir, old), card.parts)
        // The number itself as well: somebody may have to call from another phone.
        if (card.locked) onCallNumbers(onCall).forEach { Text(stringResource(R.string.on_call, it), style = LocalType.current.strong) }
        Text(card.preTrip, style = LocalType.current.text)
        card.expected?.let { Text(it, style = LocalType.current.help, color = tokens.soft) }
    }
}
