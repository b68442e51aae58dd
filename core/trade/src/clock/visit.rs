//! A visit that left something near undone.

use chrono::NaiveDate;

use super::programme::TaskId;
use super::state::Standing;
use super::task_clock::TaskClock;
use crate::quantity::Tenths;

/// The tasks that were coming up, due or past due at a visit which did not do them: a remark for whoever
/// plans, since the truck was in the bay anyway.
///
/// `clocks` as they stood before the visit, `done` its tasks, `hours` and `day` its own.
pub fn not_bundled<'a>(
    clocks: &'a [TaskClock],
    done: &[TaskId],
    hours: Option<Tenths>,
    day: NaiveDate,
) -> Vec<&'a TaskId> {
    let near = |clock: &&TaskClock| clock.state(hours, day).standing >= Standing::ComingUp;
    // A first service falls with its task, and its task with it.
    let undone = |clock: &&TaskClock| {
        !done.contains(&clock.task)
            && !clock.first_of.as_ref().is_some_and(|task| done.contains(task))
            && !clocks.iter().any(|c| c.first_of.as_ref() == Some(&clock.task) && done.contains(&c.task))
    };
    clocks.iter().filter(near).filter(undone).map(|clock| &clock.task).collect()
}
