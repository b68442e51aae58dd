//! The order of the due list.

use chrono::NaiveDate;

use super::programme::TaskId;
use super::state::{Standing, TaskState};
use super::task_clock::TaskClock;

/// One line of the due list: one task of one unit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DueRow {
    /// The unit's door number.
    pub unit: String,
    /// The task.
    pub task: TaskId,
    /// How it stands.
    pub state: TaskState,
    /// The likely day on which the hours run out; `None` when the pace is not known.
    pub likely_day: Option<NaiveDate>,
    /// The last good day by the calendar.
    pub due_day: Option<NaiveDate>,
    /// The day its first clock runs out, as far as it is known: what the list is sorted by.
    pub runs_out: Option<NaiveDate>,
}

impl DueRow {
    /// A line for `clock` as it stands `today`.
    pub fn new(
        unit: &str,
        clock: &TaskClock,
        state: TaskState,
        likely_day: Option<NaiveDate>,
        today: NaiveDate,
    ) -> DueRow {
        // Hours that are due now run out today even where no pace gives a day.
        let now = (state.standing == Standing::DueToday).then_some(today);
        let runs_out = [likely_day, clock.due_day, now].into_iter().flatten().min();
        DueRow {
            unit: unit.to_owned(),
            task: clock.task.clone(),
            state,
            likely_day,
            due_day: clock.due_day,
            runs_out,
        }
    }
}

/// Past due first, then by the day the first clock runs out: the hours' likely day or the calendar's,
/// whichever is sooner. An unknown pace sorts by the calendar; a row with no day at all comes last.
/// First services that are closed are taken off the list.
pub fn due_order(rows: &mut Vec<DueRow>) {
    rows.retain(|row| row.state.standing != Standing::Closed);
    rows.sort_by(|a, b| key(a).cmp(&key(b)));
}

fn key(row: &DueRow) -> (bool, bool, Option<NaiveDate>, &str, &TaskId) {
    let past = row.state.standing == Standing::PastDue;
    (!past, row.runs_out.is_none(), row.runs_out, &row.unit, &row.task)
}
