//! The two clocks of a task, as the ruler draws them.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_trade::clock::{DueRow, EnteredTwice, Nearer, Standing, TaskClock, due_order};
use sumpbook_trade::{EntryId, Stamp, Tenths, TruckId};

use super::figures::LeftHours;
use crate::fleet::Fleet;
use crate::state::UnitState;

/// One task with its two clocks.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TaskRow {
    /// The task's id, and its text `task-...`.
    pub id: String,
    /// How it stands.
    pub standing: Standing,
    /// The clock that runs out first.
    pub nearer: Nearer,
    /// Hours of its interval.
    pub every_hours: Option<Tenths>,
    /// Hours left or past.
    pub hours_left: Option<LeftHours>,
    /// What this meter shows when they run out.
    pub due_figure: Option<Tenths>,
    /// Thousandths of the hours interval used; over 1000 past due.
    pub hours_used_share: Option<i64>,
    /// Days left; negative when past.
    pub days_left: Option<i64>,
    /// The last good day.
    pub last_good_day: Option<NaiveDate>,
    /// Thousandths of the calendar interval used.
    pub days_used_share: Option<i64>,
    /// Its hours count by the site's dust; here each counts once until the shop's weights are applied.
    pub counts_weighted: bool,
    /// Entries that look like one service.
    pub entered_twice: Vec<EnteredTwice>,
    /// It waits for a part. It is still due.
    pub waiting: Option<WaitRow>,
}

/// A wait for a part.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WaitRow {
    /// Its entry.
    pub id: EntryId,
    /// Which part.
    pub part: String,
    /// Promised for this day.
    pub promised: Option<NaiveDate>,
}

/// Key of a standing's words.
pub fn standing_key(standing: Standing) -> &'static str {
    match standing {
        Standing::Closed => "standing-closed",
        Standing::FarOff => "standing-far-off",
        Standing::Unknown => "standing-unknown",
        Standing::ComingUp => "standing-coming-up",
        Standing::DueToday => "standing-due-today",
        Standing::PastDue => "standing-past-due",
    }
}

/// The tasks of a unit in the order in which they run out.
pub(super) fn tasks(fleet: &Fleet, truck: TruckId, state: &UnitState, now: Stamp) -> Vec<TaskRow> {
    let today = fleet.yard_day(now);
    let door = fleet.door(truck);
    let in_service = fleet.trucks.get(&truck).map(|t| t.in_service);
    let mut order: Vec<DueRow> = state
        .clocks
        .iter()
        .map(|clock| DueRow::new(&door, clock, clock.state(state.hours.due, today), None, today))
        .collect();
    due_order(&mut order);
    order
        .iter()
        .filter_map(|due| {
            let clock = state.clocks.iter().find(|clock| clock.task == due.task)?;
            Some(row(clock, due, state, in_service, today))
        })
        .collect()
}

fn row(
    clock: &TaskClock,
    due: &DueRow,
    state: &UnitState,
    in_service: Option<NaiveDate>,
    today: NaiveDate,
) -> TaskRow {
    let used = state.hours.due.zip(clock.from_hours).map(|(now, from)| now - from);
    let from_day = clock.last.map(|last| last.day).or(in_service);
    let days = |to: NaiveDate, from: NaiveDate| to.signed_duration_since(from).num_days();
    let wait = state.waiting.iter().find(|wait| wait.what.task.as_ref() == Some(&clock.task));
    TaskRow {
        id: clock.task.0.clone(),
        standing: due.state.standing,
        nearer: due.state.nearer,
        every_hours: clock.interval_hours,
        hours_left: due.state.hours_left.map(LeftHours::of),
        due_figure: clock.due_hours.map(|hours| hours - state.hours.offset),
        hours_used_share: used.zip(clock.interval_hours).and_then(|(used, every)| share(used.0, every.0)),
        days_left: due.state.days_left,
        last_good_day: clock.due_day,
        days_used_share: from_day
            .zip(clock.due_day)
            .and_then(|(from, to)| share(days(today, from), days(to, from))),
        counts_weighted: clock.counts_weighted,
        entered_twice: clock.entered_twice.clone(),
        waiting: wait.map(|wait| WaitRow {
            id: wait.entry,
            part: wait.what.part.clone(),
            promised: wait.what.promised,
        }),
    }
}

fn share(used: i64, of: i64) -> Option<i64> {
    (of > 0).then(|| used.max(0).saturating_mul(1_000) / of)
}
