//! The clocks of a unit's programme, from its services.

use std::collections::BTreeMap;

use sumpbook_trade::clock::{InService, ServiceDecision, ServiceRow, TaskClock, TaskId, task_clocks_weighed};
use sumpbook_trade::hours::{AsideWhy, Estimate, HoursLedger, JudgedReading, Verdict as Judgement};
use sumpbook_trade::record::{DefectName, ServiceDone, Source, Verdict, WaitingForPart};
use sumpbook_trade::wear::Worn;
use sumpbook_trade::{EntryId, Fact, Tenths};
use uuid::Uuid;

use super::hours::estimated_by;
use super::inputs::Bearing;
use super::scope::Scope;
use super::{KEPT_DAYS, PlannedNow, ServiceNow, WaitingNow};
use crate::fleet::Fleet;
use crate::ledger::{LedgerError, decided_with, decision_about};
use crate::store::Truth;

/// Services as the clocks read them: one row a task.
///
/// Hours are the unit's, carried over every exchange of meters: what the meter showed then, where it was read, and
/// what had been estimated by that day of hours it did not count. Of a figure that does not count (R3) no clock runs:
/// what was accepted by then stands in for it, or while the two are in question the lesser, for a doubt must never make
/// a clock run longer.
pub(super) fn rows(
    fleet: &Fleet,
    entries: &[Bearing],
    hours: &HoursLedger,
    estimates: &[Estimate],
) -> Vec<ServiceRow> {
    let mut rows = Vec::new();
    for (bearing, service) in services(entries) {
        let judged = hours.rows().iter().rev().find(|row| row.entry == bearing.entry.id.0);
        let read = match judged {
            Some(row) => Some(counted_then(hours, row)),
            None => bearing.entry.hours,
        };
        let day = fleet.yard_day(bearing.entry.at);
        let estimated = estimated_by(estimates, day, fleet.zone);
        for task in &service.tasks {
            rows.push(ServiceRow {
                entry: bearing.entry.id.0,
                task: task.clone(),
                hours: read.map(|read| read + estimated),
                day,
                at: bearing.entry.at.moment(),
                oil_reason: service.oil_reason.is_some(),
                brought_in: bearing.entry.source == Source::BroughtIn,
            });
        }
    }
    rows
}

/// The hours of the unit when a service was done whose figure was judged so.
fn counted_then(hours: &HoursLedger, told: &JudgedReading) -> Tenths {
    let slipped = told.verdict == Judgement::Aside(AsideWhy::SlippedBack);
    match hours.accepted_at_or_before(told.at).filter(|_| !told.verdict.counts() && !slipped) {
        Some(accepted) if told.in_question => accepted.total.min(told.total),
        Some(accepted) => accepted.total,
        None => told.total,
    }
}

/// The clocks as they stand, `worn` telling how late a weighted service came.
pub(super) fn clocks(
    scope: &Scope<'_>,
    rows: &[ServiceRow],
    decisions: &BTreeMap<Uuid, ServiceDecision>,
    worn: &Worn,
) -> Vec<TaskClock> {
    let (fleet, truck) = (scope.fleet, scope.truck);
    // A set that moved has been in service since it was on its first truck.
    let in_service = fleet
        .trucks
        .get(&scope.first_truck())
        .map(|t| InService { day: t.in_service, hours: t.in_service_hours });
    let weigh = |from, to| Some(worn.between(from, to));
    let programme = fleet.programme_of(truck);
    task_clocks_weighed(programme, in_service.as_ref(), rows, decisions, &fleet.numbers.clocks(), &weigh)
}

/// What the shop said about services entered twice.
pub(super) fn decisions(
    truth: &Truth<'_>,
    rows: &[ServiceRow],
) -> Result<BTreeMap<Uuid, ServiceDecision>, LedgerError> {
    let mut said = BTreeMap::new();
    for row in rows {
        let entry = EntryId(row.entry);
        let decision = match decision_about(truth, entry)? {
            Some(Verdict::SameService) => {
                let with = decided_with(truth, entry)?;
                Some(ServiceDecision::SameService { with: with.into_iter().map(|other| other.0).collect() })
            }
            Some(Verdict::Use) => Some(ServiceDecision::BothStand),
            Some(Verdict::DoNotUse) => Some(ServiceDecision::DoesNotCount),
            Some(Verdict::ReadingStands) | None => None,
        };
        if let Some(decision) = decision {
            said.insert(row.entry, decision);
        }
    }
    Ok(said)
}

/// Services of the last days, newest first.
pub(super) fn recent(entries: &[Bearing], newest_ms: i64) -> Vec<ServiceNow> {
    let since = newest_ms.saturating_sub(KEPT_DAYS.saturating_mul(86_400_000));
    let mut recent: Vec<ServiceNow> = services(entries)
        .filter(|(bearing, _)| bearing.fact.at_ms >= since)
        .map(|(bearing, service)| ServiceNow {
            entry: bearing.entry.id,
            at: bearing.entry.at.moment(),
            person: bearing.entry.person,
            hours: bearing.entry.hours,
            tasks: service.tasks.clone(),
            late: Vec::new(),
        })
        .collect();
    recent.reverse();
    recent
}

/// Waits for parts that are not over. A certificate ends what its defect waited for by then; a part that is
/// waited for after it, or for no defect by name, is waited for until somebody says that it is in.
pub(super) fn waiting(entries: &[Bearing]) -> Vec<WaitingNow> {
    let mut open: Vec<WaitingNow> = Vec::new();
    for bearing in entries {
        match &bearing.entry.fact {
            Fact::WaitingForPart(wait) => {
                open.retain(|known| !is_same_wait(&known.what, wait));
                if !wait.over {
                    let at = bearing.entry.at.moment();
                    open.push(WaitingNow { entry: bearing.entry.id, at, what: wait.clone() });
                }
            }
            Fact::Certificate(certificate) => {
                let of = |known: &WaitingNow| known.what.defect.clone();
                open.retain(|known| {
                    of(known).is_none_or(|defect| !defect.is_same_place(&certificate.defect))
                });
            }
            _ => {}
        }
    }
    open
}

impl WaitingNow {
    /// Whether this word that a wait is over is about this one.
    pub fn is_ended_by(&self, over: &WaitingForPart) -> bool {
        over.over && is_same_wait(&self.what, over)
    }
}

/// The same part for the same work. An older wait for a defect names none: any of the unit's ends it.
fn is_same_wait(known: &WaitingForPart, wait: &WaitingForPart) -> bool {
    let same = match (&known.defect, &wait.defect) {
        (Some(known), Some(wait)) => known.is_same_place(wait),
        (None, Some(_)) => wait.over,
        (Some(_), None) => false,
        (None, None) => true,
    };
    same && known.part == wait.part && known.task == wait.task
}

/// Visits that are planned. What is planned again moves; a task done and a defect certified leave their visit.
pub(super) fn planned(entries: &[Bearing]) -> Vec<PlannedNow> {
    let mut open: Vec<PlannedNow> = Vec::new();
    for bearing in entries {
        let (tasks, defects): (&[TaskId], &[DefectName]) = match &bearing.entry.fact {
            Fact::VisitPlan(plan) => (&plan.tasks, &plan.defects),
            Fact::ServiceDone(done) => (&done.tasks, &[]),
            Fact::Certificate(certificate) => (&[], std::slice::from_ref(&certificate.defect)),
            _ => continue,
        };
        for visit in &mut open {
            visit.tasks.retain(|task| !tasks.contains(task));
            visit.defects.retain(|defect| !defects.iter().any(|gone| gone.is_same_place(defect)));
        }
        open.retain(|visit| !visit.tasks.is_empty() || !visit.defects.is_empty());
        if let Fact::VisitPlan(plan) = &bearing.entry.fact {
            open.push(PlannedNow {
                entry: bearing.entry.id,
                at: bearing.entry.at.moment(),
                person: bearing.entry.person,
                tasks: plan.tasks.clone(),
                defects: plan.defects.clone(),
                day: plan.day,
                where_and_who: plan.where_and_who.clone(),
            });
        }
    }
    open
}

fn services(entries: &[Bearing]) -> impl Iterator<Item = (&Bearing, &ServiceDone)> {
    entries.iter().filter_map(|bearing| match &bearing.entry.fact {
        Fact::ServiceDone(service) => Some((bearing, service)),
        _ => None,
    })
}
