//! One unit's day, read out of the ledger once for all sections.

use chrono::{DateTime, Datelike, FixedOffset, NaiveDate, NaiveTime, TimeDelta};
use sumpbook_daybook::gate::KeyId;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::state::UnitState;
use sumpbook_daybook::store::{FactRow, HeldEntry, Truth};
use sumpbook_trade::day::{
    DEFAULT_LIMIT, DayRecords, DayState, DayStatus, EndOfDay, PreTrip, Roster, Use, UseKind, day_state,
    yard_moment,
};
use sumpbook_trade::record::Source;
use sumpbook_trade::{Entry, Fact, TruckId};
use uuid::Uuid;

use super::Yard;
use crate::ShopError;

/// Days back in which the phone that writes of a unit is looked for.
const PHONE_DAYS: i32 = 45;

/// The yard's morning, minutes of the day: out by then where no time is given. Common practice, no source.
const MORNING: u16 = 6 * 60;

/// An entry with its columns.
pub(super) struct Told {
    pub(super) fact: FactRow,
    pub(super) held: HeldEntry,
    pub(super) entry: Entry,
}

/// Everything the sections ask about one unit.
pub(super) struct UnitDay {
    pub(super) door: String,
    pub(super) truck: TruckId,
    /// As its entries up to the cut add up to.
    pub(super) state: UnitState,
    /// What it is down as for the day; none when nothing was said.
    pub(super) status: Option<DayStatus>,
    /// Out from this moment, where the roster gives one.
    pub(super) expected: Option<DateTime<FixedOffset>>,
    pub(super) day: DayState,
    /// Entries of the day that count, by time.
    pub(super) told: Vec<Told>,
    /// Uses among them.
    pub(super) uses: Vec<Use>,
    /// Who wrote of it last, the shop itself aside.
    pub(super) phone: Option<KeyId>,
}

impl UnitDay {
    pub(super) fn read(
        ledger: &Ledger,
        yard: &Yard,
        door: String,
        truck: TruckId,
    ) -> Result<UnitDay, ShopError> {
        let truth = ledger.store().truth();
        let number = day_number(yard.day);
        let facts = truth.facts_of_unit_days(truck, number.saturating_sub(1), number)?;
        let mut told = Vec::new();
        for fact in facts.into_iter().filter(|f| f.judged == Judged::Counts && f.at_ms <= yard.cut_ms) {
            if let Some((held, entry)) = entry_of(&truth, fact.n)? {
                told.push(Told { fact, held, entry });
            }
        }
        told.sort_by_key(|told| (told.fact.at_ms, told.fact.id));
        let state = ledger.unit_state_at(truck, yard.cut_ms)?;
        // What a unit is down as may be said afterwards: the roster is read as it is known, not as it was.
        let roster = ledger.unit_state(truck)?.status_on(yard.day);
        let uses: Vec<Use> = told.iter().filter_map(use_of).collect();
        let (pre_trips, ends) = walks(&told);
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
                limit: DEFAULT_LIMIT,
                tz: yard.zone,
            },
        );
        told.retain(|told| told.fact.day == number);
        let phone = phone_of(ledger, &truth, truck, number, yard.cut_ms)?;
        Ok(UnitDay { door, truck, state, status, expected, day, told, uses, phone })
    }

    /// The entry of the day with this id.
    pub(super) fn told(&self, entry: Uuid) -> Option<&Told> {
        self.told.iter().find(|told| told.entry.id.0 == entry)
    }
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

fn use_of(told: &Told) -> Option<Use> {
    // What was typed in at a desk shows nobody at the truck.
    if !matches!(told.entry.source, Source::Phone | Source::Paper) {
        return None;
    }
    let what = match &told.entry.fact {
        Fact::StartAir(_) => UseKind::Start,
        Fact::Drive(_) => UseKind::Drive,
        Fact::TopUp(_) => UseKind::Pour,
        Fact::HourReading(_) => UseKind::Reading,
        _ => return None,
    };
    Some(Use { at: told.entry.at.moment(), entry: told.entry.id.0, what })
}

fn walks(told: &[Told]) -> (Vec<PreTrip>, Vec<EndOfDay>) {
    let (mut pre_trips, mut ends) = (Vec::new(), Vec::new());
    for Told { entry, .. } in told {
        let (at, id) = (entry.at.moment(), entry.id.0);
        let person = entry.person.map_or(Uuid::nil(), |person| person.0);
        match &entry.fact {
            Fact::PreTripSection(_) => pre_trips.push(PreTrip { signed_at: at, entry: id, person }),
            Fact::EndOfDay(_) => ends.push(EndOfDay { at, entry: id, person }),
            _ => {}
        }
    }
    (pre_trips, ends)
}

fn phone_of(
    ledger: &Ledger,
    truth: &Truth<'_>,
    truck: TruckId,
    day: i32,
    cut_ms: i64,
) -> Result<Option<KeyId>, ShopError> {
    // The newest day first: usually it answers, and no older one is read.
    for day in (day.saturating_sub(PHONE_DAYS)..=day).rev() {
        let mut facts = truth.facts_of_unit_days(truck, day, day)?;
        facts.sort_by_key(|fact| (fact.at_ms, fact.id));
        for fact in facts.iter().rev().filter(|fact| fact.at_ms <= cut_ms) {
            let Some(held) = truth.entry(fact.n)? else { continue };
            if held.row.actor.key() != ledger.root().shop.id() {
                return Ok(Some(held.row.actor.key()));
            }
        }
    }
    Ok(None)
}

/// 24 hours before a moment, in milliseconds.
pub(super) fn a_day_before(ms: i64) -> i64 {
    ms.saturating_sub(TimeDelta::hours(24).num_milliseconds())
}
