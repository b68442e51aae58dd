//! One unit's day, read out of the ledger once for all sections.

use chrono::{DateTime, Datelike, FixedOffset, NaiveDate, NaiveTime, TimeDelta};
use sumpbook_daybook::gate::KeyId;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::state::{UnitState, WROTE_DAYS};
use sumpbook_daybook::store::{FactRow, HeldEntry, Truth};
use sumpbook_trade::day::{
    DayRecords, DayState, DayStatus, EndOfDay, PreTrip, Roster, Use, UseKind, day_state, yard_moment,
};
use sumpbook_trade::record::Source;
use sumpbook_trade::{Entry, Fact, FactKind, TruckId};
use uuid::Uuid;

use super::Yard;
use super::day_facts::{DayFact, DayFacts};
use crate::ShopError;

/// The yard's morning, minutes of the day: out by then where no time is given. Common practice, no source.
const MORNING: u16 = 6 * 60;

/// An entry of the day with its columns: what somebody did or read at the truck.
pub(super) struct Told {
    pub(super) fact: FactRow,
    pub(super) entry: Entry,
}

/// Everything the sections ask about one unit.
pub(super) struct UnitDay {
    pub(super) door: String,
    pub(super) truck: TruckId,
    /// As its entries up to the cut add up to.
    pub(super) state: UnitState,
    /// As all its entries add up to, where that is something else.
    later: Option<UnitState>,
    /// What it is down as for the day; none when nothing was said.
    pub(super) status: Option<DayStatus>,
    /// Its set is laid up since then, and the shop has said nothing else of the unit for a day after that: nobody
    /// expects it out.
    pub(super) laid_up: Option<DateTime<FixedOffset>>,
    /// Out from this moment, where the roster gives one.
    pub(super) expected: Option<DateTime<FixedOffset>>,
    pub(super) day: DayState,
    /// Uses, pours and readings of the day that count, by time.
    pub(super) told: Vec<Told>,
    /// Uses among them, and those of the day before.
    pub(super) uses: Vec<Use>,
    /// Who wrote of it last, the shop itself aside.
    pub(super) phone: Option<KeyId>,
}

impl UnitDay {
    /// Reads the day of every unit of the yard, by door number.
    pub(super) fn read_all(
        ledger: &Ledger,
        yard: &Yard,
        facts: &DayFacts,
    ) -> Result<Vec<UnitDay>, ShopError> {
        UnitDay::read_these(ledger, yard, facts, yard.units(ledger)?)
    }

    /// Reads the day of these units, in their order.
    pub(super) fn read_these(
        ledger: &Ledger,
        yard: &Yard,
        facts: &DayFacts,
        doors: Vec<(String, TruckId)>,
    ) -> Result<Vec<UnitDay>, ShopError> {
        let mut states = ledger.unit_states(&doors.iter().map(|(_, truck)| *truck).collect())?;
        let mut units = Vec::with_capacity(doors.len());
        for (door, truck) in doors {
            if let Some(now) = states.remove(&truck) {
                units.push(UnitDay::of(ledger, yard, door, now, facts.of(truck))?);
            }
        }
        Ok(units)
    }

    fn of(
        ledger: &Ledger,
        yard: &Yard,
        door: String,
        now: UnitState,
        facts: &[DayFact],
    ) -> Result<UnitDay, ShopError> {
        let number = day_number(yard.day);
        let counts = |told: &&DayFact| told.fact.judged == Judged::Counts && told.fact.at_ms <= yard.cut_ms;
        let mut facts: Vec<&DayFact> = facts.iter().filter(counts).collect();
        facts.sort_by_key(|told| (told.fact.at_ms, told.fact.id));
        // What a unit is down as may be said afterwards: the roster is read as it is known, not as it was.
        let roster = now.status_on(yard.day);
        let roster_from = now.roster.iter().rev().map(|change| change.from).find(|from| *from <= yard.day);
        let (state, later) = match ledger.earlier_state(&now, yard.cut_ms)? {
            Some(earlier) => (earlier, Some(now)),
            None => (now, None),
        };
        let laid_up = laid_up(yard, &state, roster_from);
        let stops = lone_stops(ledger, &facts)?;
        let stopped =
            |told: &Told| Use { at: told.entry.at.moment(), entry: told.entry.id.0, what: UseKind::Stop };
        let mut uses: Vec<Use> = facts.iter().filter_map(|told| use_of(told.entry.as_ref()?)).collect();
        uses.extend(stops.iter().map(stopped));
        uses.sort_by_key(|used| used.at);
        let (pre_trips, ends) = walks(ledger, yard, &facts)?;
        let roster = if laid_up.is_some() { Some((DayStatus::Stored, None)) } else { roster };
        let status = roster.map(|(status, _)| status);
        let out_from =
            roster.filter(|(status, _)| *status == DayStatus::Out).and_then(|(_, minute)| time(minute?));
        let expected = out_from.and_then(|from| yard_moment(yard.day, from, yard.zone));
        // No time given is the yard's morning: a walk forgotten the evening before says nothing of it.
        let expected_from = out_from.or_else(|| time(MORNING));
        let day = day_state(
            yard.day,
            yard.cut(),
            &DayRecords {
                roster: Roster { status: status.unwrap_or(DayStatus::Parked), expected_from },
                pre_trips: &pre_trips,
                ends: &ends,
                uses: &uses,
                limit: ledger.fleet().numbers.covers(),
                tz: yard.zone,
            },
        );
        let of_day = facts.iter().filter(|told| told.fact.day == number);
        let mut told: Vec<Told> =
            of_day.filter_map(|told| Some(Told { fact: told.fact, entry: told.entry.clone()? })).collect();
        told.extend(stops.into_iter().filter(|stop| stop.fact.day == number));
        told.sort_by_key(|told| (told.fact.at_ms, told.fact.id));
        let wrote = state.wrote_last.filter(|wrote| wrote.day >= number.saturating_sub(WROTE_DAYS));
        let phone = wrote.map(|wrote| KeyId(wrote.device));
        let truck = state.truck;
        Ok(UnitDay { door, truck, state, later, status, laid_up, expected, day, told, uses, phone })
    }

    /// As all its entries add up to, those after the cut too.
    pub(super) fn as_known(&self) -> &UnitState {
        self.later.as_ref().unwrap_or(&self.state)
    }

    /// As whoever looks at the sheet holds it: while the day is under way with all that came, for what is dated after
    /// the moment of looking cannot be, and a lock-out must not wait for a clock that is ahead.
    pub(super) fn as_looked_at(&self, yard: &Yard) -> &UnitState {
        if yard.is_under_way() { self.as_known() } else { &self.state }
    }

    /// Its state, with the defects that whoever looks at the sheet holds it to have.
    pub(super) fn into_state(self, yard: &Yard) -> UnitState {
        match self.later.filter(|_| yard.is_under_way()) {
            Some(later) => UnitState { defects: later.defects, ..self.state },
            None => self.state,
        }
    }

    /// The entry of the day with this id.
    pub(super) fn told(&self, entry: Uuid) -> Option<&Told> {
        self.told.iter().find(|told| told.entry.id.0 == entry)
    }
}

/// Since when a unit is put away, for its day's line. A unit that was to be out before it was put away was expected
/// all the same; one that the shop has out on a day after that is driven with its air locked, and expected.
fn laid_up(yard: &Yard, state: &UnitState, said_from: Option<NaiveDate>) -> Option<DateTime<FixedOffset>> {
    let since = state.laid_up_at(yard.cut())?.since;
    let morning = time(MORNING).and_then(|morning| yard_moment(yard.day, morning, yard.zone));
    let said_since = said_from.is_some_and(|from| from > yard.day_of(since));
    (!said_since && morning.is_none_or(|morning| since <= morning)).then_some(since)
}

/// A calendar day as the projection counts them: days since 1970-01-01.
pub(crate) fn day_number(day: NaiveDate) -> i32 {
    day.num_days_from_ce().saturating_sub(719_163)
}

/// An entry by its number; none when it does not read.
pub(crate) fn entry_of(truth: &Truth<'_>, n: i64) -> Result<Option<(HeldEntry, Entry)>, ShopError> {
    let Some(held) = truth.entry(n)? else { return Ok(None) };
    Ok(Entry::from_payload(&held.row.payload).ok().map(|entry| (held, entry)))
}

fn time(minute: u16) -> Option<NaiveTime> {
    NaiveTime::from_num_seconds_from_midnight_opt(u32::from(minute).saturating_mul(60), 0)
}

fn use_of(entry: &Entry) -> Option<Use> {
    if !is_at_the_truck(entry) {
        return None;
    }
    let what = match &entry.fact {
        Fact::StartAir(_) => UseKind::Start,
        Fact::Drive(_) => UseKind::Drive,
        Fact::TopUp(_) => UseKind::Pour,
        Fact::HourReading(_) => UseKind::Reading,
        _ => return None,
    };
    Some(Use { at: entry.at.moment(), entry: entry.id.0, what })
}

/// Stops of the air at the truck with no start before them among the facts of these days: somebody had it running.
fn lone_stops(ledger: &Ledger, facts: &[&DayFact]) -> Result<Vec<Told>, ShopError> {
    let truth = ledger.store().truth();
    let (mut running, mut lone) = (false, Vec::new());
    for DayFact { fact, .. } in facts {
        match FactKind::from_code(fact.kind) {
            FactKind::StartAir => running = true,
            FactKind::StopAir if !running => lone.push(*fact),
            FactKind::StopAir => running = false,
            _ => {}
        }
    }
    let mut told = Vec::new();
    for fact in lone {
        let entry = entry_of(&truth, fact.n)?.map(|(_, entry)| entry);
        told.extend(entry.filter(is_at_the_truck).map(|entry| Told { fact, entry }));
    }
    Ok(told)
}

/// What was typed in at a desk shows nobody at the truck.
fn is_at_the_truck(entry: &Entry) -> bool {
    matches!(entry.source, Source::Phone | Source::Paper)
}

fn walks(
    ledger: &Ledger,
    yard: &Yard,
    facts: &[&DayFact],
) -> Result<(Vec<PreTrip>, Vec<EndOfDay>), ShopError> {
    let (mut pre_trips, mut ends) = (Vec::new(), Vec::new());
    for DayFact { fact, .. } in facts {
        let (at, entry) = (yard.stamp_ms(fact.at_ms).moment(), fact.id.0);
        let person = fact.person.map_or(Uuid::nil(), |person| person.0);
        match FactKind::from_code(fact.kind) {
            FactKind::PreTripSection if ledger.ends_a_walk(fact)? => {
                pre_trips.push(PreTrip { signed_at: at, entry, person });
            }
            FactKind::EndOfDay => ends.push(EndOfDay { at, entry, person }),
            _ => {}
        }
    }
    Ok((pre_trips, ends))
}

/// 24 hours before a moment, in milliseconds.
pub(super) fn a_day_before(ms: i64) -> i64 {
    ms.saturating_sub(TimeDelta::hours(24).num_milliseconds())
}
