//! Where the compressor's oil goes, from the unit's pours, levels and services (R11).

use std::collections::BTreeSet;

use chrono::{DateTime, FixedOffset, TimeDelta};
use serde::{Deserialize, Serialize};
use sumpbook_trade::clock::TaskClock;
use sumpbook_trade::fluid::Fluid;
use sumpbook_trade::hours::HoursLedger;
use sumpbook_trade::oil::{
    Against, CarryOver, Fill, Level, Millilitres, MlPerHour, OilEvent, OilSystem, OilThing, OilVerdict,
    SampleDrawn, against_usual, carry_over, file_answer, fills, load_share, use_at, verdict,
};
use sumpbook_trade::record::Pour;
use sumpbook_trade::{Entry, EntryId, Fact, Tenths, TruckId};
use uuid::Uuid;

use super::inputs::Bearing;
use super::rose::{RoseNow, rose_last};
use super::scope::Scope;
use crate::fleet::Fleet;
use crate::ledger::LedgerError;

/// The oil that is in it now.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct OilNow {
    /// Everything since the last drain; none before anything was recorded of it.
    pub fill: Option<Fill>,
    /// Its balances against its own baseline.
    pub against: Option<Against>,
    /// What the newest balance says leaves with the air; none without a rated delivery.
    pub carry_over: Option<CarryOver>,
    /// What may be used in an hour: the carry-over limit at this delivery.
    pub limit: Option<MlPerHour>,
    /// What the newest balance says of that limit.
    pub verdict: Option<OilVerdict>,
    /// Answers of the laboratory, each with the fill it belongs to, newest first.
    pub lab: Vec<LabNow>,
    /// The newest level rose, and no pour is recorded.
    pub rose: Option<RoseNow>,
}

/// A laboratory's answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LabNow {
    /// Its entry.
    pub entry: EntryId,
    /// When it came.
    pub at: DateTime<FixedOffset>,
    /// When the sample was drawn.
    pub drawn: DateTime<FixedOffset>,
    /// The number on the bottle.
    pub bottle: String,
    /// Hours on the oil then.
    pub hours_on_oil: Option<Tenths>,
    /// The oil was changed since: it is not about what is in there now.
    pub changed_since: bool,
    /// In the laboratory's words.
    pub words: String,
}

/// The oil as its entries have it; `looked` are levels that were read alone and were in view.
pub(super) fn oil(
    scope: &Scope<'_>,
    (entries, looked): (&[Bearing], &[Bearing]),
    (ledger, clocks): (&HoursLedger, &[TaskClock]),
    upto_ms: i64,
) -> Result<OilNow, LedgerError> {
    let (fleet, truck) = (scope.fleet, scope.truck);
    // One service entered twice filled it once, on the first of the two (R7).
    let again: BTreeSet<Uuid> = clocks
        .iter()
        .filter(|clock| clock.counts_weighted)
        .flat_map(|clock| clock.entered_twice.iter().map(|two| two.second))
        .collect();
    let profile = fleet.set_on(truck).map(|set| &set.profile);
    let system = OilSystem::of(profile);
    let numbers = fleet.numbers.oil();
    let mut events: Vec<OilEvent> = Vec::new();
    for bearing in entries.iter().chain(looked) {
        let entry = &bearing.entry;
        let thing = match &entry.fact {
            Fact::ServiceDone(_) if again.contains(&entry.id.0) => None,
            Fact::ServiceDone(done) => filled(fleet, truck, done),
            Fact::TopUp(top_up) if top_up.fluid == Fluid::CompressorOil => poured(top_up),
            Fact::LevelCheck(level) if level.fluid == Fluid::CompressorOil => {
                Some(OilThing::Looked { level: Level::of_check(level) })
            }
            _ => None,
        };
        events.extend(thing.map(|thing| OilEvent {
            entry: entry.id.0,
            at: entry.at.moment(),
            hours: hours_at(ledger, entry),
            thing,
        }));
    }
    let is_fill = |bearing: &Bearing| match &bearing.entry.fact {
        Fact::ServiceDone(done) => {
            !again.contains(&bearing.entry.id.0) && filled(fleet, truck, done).is_some()
        }
        _ => false,
    };
    let rose = rose_last(scope, (entries, looked), is_fill, upto_ms)?;
    let all = fills(&events, &system, &numbers);
    let lab = lab(entries, &all, ledger);
    let delivery = profile.and_then(|p| p.delivery).and_then(sumpbook_trade::Figure::flow);
    let share = load_share(profile.and_then(|p| p.load_share).map(|percent| f64::from(percent) / 100.0));
    let limit = delivery.map(|delivery| use_at(numbers.most_mg_m3, delivery, share, &numbers));
    let fill = all.into_iter().next_back();
    let last = fill.as_ref().and_then(Fill::last_balance);
    let carried = last.zip(delivery).and_then(|(balance, delivery)| {
        carry_over(balance.used(), balance.hours(), delivery, share, &numbers)
    });
    Ok(OilNow {
        against: fill.as_ref().map(against_usual),
        carry_over: carried,
        verdict: last.zip(limit).map(|(balance, limit)| verdict(balance, limit, share.is_some(), &numbers)),
        limit,
        lab,
        rose,
        fill,
    })
}

/// How far back the meter may have been read for a pour nobody read it at: to the walk of that day, or the evening before.
const READ_WITHIN: TimeDelta = TimeDelta::hours(24);

/// Running hours of the unit at an entry: its own reading, carried over all meters; for a pour nobody read the meter at
/// the last one of the day before it. An older one would say that all the oil went in the hours up to it.
fn hours_at(ledger: &HoursLedger, entry: &Entry) -> Option<Tenths> {
    let own = ledger.rows().iter().rev().find(|row| row.entry == entry.id.0 && row.verdict.counts());
    let lately = || {
        let last = ledger.accepted_at_or_before(entry.at.moment())?;
        (entry.at.moment() - last.at <= READ_WITHIN).then_some(last)
    };
    own.or_else(lately).map(|row| row.total)
}

fn filled(fleet: &Fleet, truck: TruckId, done: &sumpbook_trade::record::ServiceDone) -> Option<OilThing> {
    let by_task = fleet.programme_of(truck).oil_tasks().any(|task| done.tasks.contains(task));
    let changed = by_task || done.oil.is_some() || done.oil_reason.is_some();
    let volume = done.oil.as_ref().and_then(|oil| oil.volume).and_then(Millilitres::of);
    changed.then_some(OilThing::Filled { volume })
}

fn poured(top_up: &sumpbook_trade::record::TopUp) -> Option<OilThing> {
    let volume = |pour: &Pour| Millilitres::of(pour.volume);
    let volume = top_up.pours.iter().filter_map(volume).fold(Millilitres::ZERO, |sum, one| sum + one);
    Some(OilThing::Poured { volume, after: Level::after(top_up) })
}

fn lab(entries: &[Bearing], fills: &[Fill], ledger: &HoursLedger) -> Vec<LabNow> {
    let mut found: Vec<LabNow> = Vec::new();
    for bearing in entries {
        let Fact::LabAnswer(answer) = &bearing.entry.fact else { continue };
        let drawn = entries.iter().find(|other| other.entry.id == answer.sample);
        let Some(Bearing { entry: sample, .. }) = drawn else { continue };
        let Fact::Sample(bottle) = &sample.fact else { continue };
        let of = SampleDrawn { entry: sample.id.0, at: sample.at.moment(), hours: hours_at(ledger, sample) };
        let filed = file_answer(&of, fills);
        found.push(LabNow {
            entry: bearing.entry.id,
            at: bearing.entry.at.moment(),
            drawn: sample.at.moment(),
            bottle: bottle.bottle.clone(),
            hours_on_oil: bottle.hours_on_oil.or(filed.and_then(|filed| filed.hours_on_oil)),
            changed_since: filed.is_some_and(|filed| filed.changed_since),
            words: answer.words.clone(),
        });
    }
    found.reverse();
    found
}
