//! Who comes in, and which parts are here for it.

use std::collections::BTreeMap;

use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::clock::{TaskClock, TaskId};
use sumpbook_trade::record::WaitingForPart;
use sumpbook_trade::{Fact, FactKind, Stamp};

use super::Yard;
use super::record::{PartIn, VisitRow};
use super::unit_day::{UnitDay, a_day_before, entry_of};
use crate::ShopError;
use crate::parts;
use crate::plan::PlannedDefect;

/// Waits of one unit looked through, newest first.
const WAITS: i64 = 40;

/// Visits planned for a day: what of them is not done and was not moved to another.
pub(super) fn planned_for(
    ledger: &Ledger,
    units: &[UnitDay],
    day: chrono::NaiveDate,
) -> Result<Vec<VisitRow>, ShopError> {
    let mut rows = Vec::new();
    for unit in units {
        for visit in unit.state.planned.iter().filter(|visit| visit.day == day) {
            let tasks: Vec<String> = visit.tasks.iter().map(ToString::to_string).collect();
            rows.push(VisitRow {
                unit: unit.door.clone(),
                oil: parts::oil(ledger, unit.truck, &tasks)?,
                tasks,
                defects: visit.defects.iter().map(PlannedDefect::of).collect(),
                where_and_who: visit.where_and_who.clone(),
            });
        }
    }
    Ok(rows)
}

/// Parts that were waited for and came: for a task until it is done, for anything else for a day.
pub(super) fn parts_in(ledger: &Ledger, yard: &Yard, units: &[UnitDay]) -> Result<Vec<PartIn>, ShopError> {
    let mut rows = Vec::new();
    for unit in units {
        for ((task, part), at) in came(ledger, yard, unit)? {
            let still = match &task {
                Some(task) => unit.state.clocks.iter().any(|clock| is_to_do(yard, clock, task, at)),
                None => at.unix_ms() >= a_day_before(yard.cut_ms),
            };
            if still {
                let task = task.map(|task| task.to_string());
                rows.push(PartIn { unit: unit.door.clone(), task, part, at });
            }
        }
    }
    Ok(rows)
}

/// The task was not done since.
fn is_to_do(yard: &Yard, clock: &TaskClock, task: &TaskId, since: Stamp) -> bool {
    clock.task == *task
        && !clock.closed
        && clock.last.is_none_or(|last| last.day < yard.day_of(since.moment()))
}

/// Waits of a unit whose newest word is that they are over, with that word's moment.
type Came = BTreeMap<(Option<TaskId>, String), Stamp>;

fn came(ledger: &Ledger, yard: &Yard, unit: &UnitDay) -> Result<Came, ShopError> {
    let truth = ledger.store().truth();
    let mut newest: BTreeMap<(Option<TaskId>, String), (bool, Stamp)> = BTreeMap::new();
    for fact in truth.newest_facts(unit.truck, FactKind::WaitingForPart.code().unwrap_or(0), WAITS)? {
        if fact.judged != Judged::Counts || fact.at_ms > yard.cut_ms {
            continue;
        }
        if let Some((_, entry)) = entry_of(&truth, fact.n)?
            && let Fact::WaitingForPart(WaitingForPart { task, part, over, .. }) = entry.fact
        {
            newest.entry((task, part)).or_insert((over, yard.stamp(entry.at.moment())));
        }
    }
    Ok(newest.into_iter().filter(|(_, (over, _))| *over).map(|(wait, (_, at))| (wait, at)).collect())
}
