//! What the sites did to the oil, and oil that calls its service now (R10).

use serde::{Deserialize, Serialize};
use sumpbook_trade::clock::{FineHours, ServiceRow, TaskClock, TaskId};
use sumpbook_trade::forecast::HoursAt;
use sumpbook_trade::record::{Answer, AnswerKind, OilLook};
use sumpbook_trade::wear::{Called, OilChange, OilSeen, Said, WhyCalled, Worn, called_now, spells};
use sumpbook_trade::{Entry, Fact, FactKind, Tenths};

use super::found::wrong_pour;
use super::inputs::Bearing;
use super::scope::Scope;
use crate::fleet::Fleet;
use crate::judgement::Judged;
use crate::ledger::LedgerError;

/// Weighted hours of the tasks that count them.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct WearNow {
    /// Each such task with the weighted hours used since it was last done.
    pub used: Vec<(TaskId, FineHours)>,
    /// Hundredths the last hours counted; 100 where no weight was ever set.
    pub hundredths: u32,
}

/// How a unit's hours weigh, from its accepted readings, what was said of its sites and the set's weights.
pub(super) fn worn(scope: &Scope<'_>, readings: &[HoursAt], upto_ms: i64) -> Result<Worn, LedgerError> {
    let fleet = scope.fleet;
    let weights = fleet.weights_on(scope.truck);
    let mut said = Vec::new();
    for bearing in scope.of_kind(FactKind::SiteCondition, upto_ms)? {
        if let Fact::SiteCondition(site) = &bearing.entry.fact {
            said.push(Said { at: bearing.entry.at.moment(), dust: site.dust });
        }
    }
    // Without a word of dust every hour is a clean one, and no day needs its end.
    let mut day_ends = Vec::new();
    if !said.is_empty() {
        for fact in scope.facts_of_kind(FactKind::EndOfDay, upto_ms)? {
            let at = chrono::DateTime::from_timestamp_millis(fact.at_ms);
            day_ends.extend(at.filter(|_| fact.judged == Judged::Counts).map(|at| at.fixed_offset()));
        }
    }
    Ok(Worn::of(readings, &spells(&said, &day_ends, fleet.zone), &weights, fleet.zone))
}

/// Weighted hours used of each task that counts them, at `now` hours of the unit.
pub(super) fn used(clocks: &[TaskClock], worn: &Worn, now: Option<Tenths>) -> WearNow {
    let weighted = clocks.iter().filter(|clock| clock.counts_weighted);
    let used = weighted
        .filter_map(|clock| Some((clock.task.clone(), worn.between(clock.from_hours?, now?))))
        .collect();
    WearNow { used, hundredths: worn.weight_now() }
}

/// Whether the oil calls for its service.
pub(super) fn called(fleet: &Fleet, entries: &[Bearing], services: &[ServiceRow]) -> Option<Called> {
    let mut seen = Vec::new();
    for Bearing { entry, .. } in entries {
        let why = why_called(fleet, entry);
        seen.extend(why.map(|why| OilSeen { entry: entry.id.0, at: entry.at.moment(), why: Some(why) }));
    }
    let oil_entries = entries.iter().filter_map(|bearing| match &bearing.entry.fact {
        Fact::ServiceDone(done) if done.oil.is_some() || done.oil_reason.is_some() => {
            Some(bearing.entry.at.moment())
        }
        _ => None,
    });
    let by_task = services.iter().filter(|row| is_oil_task(fleet, entries, row)).map(|row| row.at);
    let changes: Vec<OilChange> = oil_entries.chain(by_task).map(|at| OilChange { at }).collect();
    called_now(&seen, &changes)
}

fn is_oil_task(fleet: &Fleet, entries: &[Bearing], row: &ServiceRow) -> bool {
    let truck = entries.iter().find_map(|bearing| bearing.entry.unit);
    truck.is_some_and(|truck| fleet.programme_of(truck).oil_tasks().any(|task| *task == row.task))
}

fn why_called(fleet: &Fleet, entry: &Entry) -> Option<WhyCalled> {
    match &entry.fact {
        Fact::OilCondition(condition) => WhyCalled::of_look(condition.look),
        Fact::LevelCheck(level) => level.look.and_then(WhyCalled::of_look),
        Fact::PreTripSection(section) => looked(&section.answers),
        Fact::EndOfDay(report) => looked(&report.defects),
        Fact::TopUp(_) => wrong_pour(fleet, entry).map(|_| WhyCalled::WrongOil),
        _ => None,
    }
}

fn looked(answers: &[Answer]) -> Option<WhyCalled> {
    let bad = answers.iter().filter(|a| a.item == "oil-look" && a.answer == AnswerKind::Defect);
    let look = |answer: &Answer| match answer.word.as_deref() {
        Some("milky") => Some(OilLook::Milky),
        Some("burnt") => Some(OilLook::Burnt),
        _ => None,
    };
    bad.filter_map(look).find_map(WhyCalled::of_look)
}
