//! One task's two clocks, from the services recorded.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::doubles::{ClockNumbers, Event, events};
use super::fine::FineHours;
use super::programme::{FirstService, Programme, Task, TaskId};
use super::service::{EnteredTwice, InService, LastDone, ServiceDecision, ServiceRow};
use super::state::Ahead;
use crate::calendar::add_months;
use crate::quantity::Tenths;

/// By how much the last service came late, each clock by itself. A side that was in time is `None`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct LateBy {
    /// Hours over, weighted where the task counts so; at least a tenth.
    pub hours: Option<FineHours>,
    /// Days over; at least one.
    pub days: Option<i64>,
}

/// A task of a unit with its two clocks. Ask [`TaskClock::state`] how it stands.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct TaskClock {
    /// The task, or the first service of one.
    pub task: TaskId,
    /// Of a first service, the task that it opens.
    pub first_of: Option<TaskId>,
    /// Running hours from `from_hours` to the end; `None` where hours do not count.
    pub interval_hours: Option<Tenths>,
    /// Whether those hours are weighted by the site.
    pub counts_weighted: bool,
    /// Whether the calendar counts.
    pub counts_days: bool,
    /// Days the parts take to come.
    pub lead_days: u32,
    /// When it is coming up.
    #[serde(default)]
    pub ahead: Ahead,
    /// The service it runs from; `None` when never done.
    pub last: Option<LastDone>,
    /// Running hours the hours clock starts at: the last service's, or 0.0 when never done. `None` when the
    /// last service gives no hours, which is not zero.
    pub from_hours: Option<Tenths>,
    /// The last good figure on the meter, if each hour to come counts once.
    pub due_hours: Option<Tenths>,
    /// The last good day.
    pub due_day: Option<NaiveDate>,
    /// Of a first service: done, or overtaken by a regular one. It never returns.
    pub closed: bool,
    /// How late the last service came.
    pub late_by: Option<LateBy>,
    /// Entries taken for one service, the newest service's only.
    pub entered_twice: Vec<EnteredTwice>,
}

/// The clocks of every task of a programme, first services before the task they open.
///
/// `services` may hold rows of any task in any order. `in_service` `None` means the day is not known: the
/// calendar of a task never done is then unknown too.
pub fn task_clocks(
    programme: &Programme,
    in_service: Option<&InService>,
    services: &[ServiceRow],
    decisions: &BTreeMap<Uuid, ServiceDecision>,
) -> Vec<TaskClock> {
    let plain = |from, to| Some(FineHours::from(to - from));
    task_clocks_weighed(programme, in_service, services, decisions, &ClockNumbers::default(), &plain)
}

/// As [`task_clocks`], by the shop's own numbers, with `weigh` giving the weighted hours between two meter figures
/// (R10): it decides
/// how late a weighted service came. `None` from it means not known.
pub fn task_clocks_weighed(
    programme: &Programme,
    in_service: Option<&InService>,
    services: &[ServiceRow],
    decisions: &BTreeMap<Uuid, ServiceDecision>,
    numbers: &ClockNumbers,
    weigh: &dyn Fn(Tenths, Tenths) -> Option<FineHours>,
) -> Vec<TaskClock> {
    let mut clocks = Vec::new();
    for task in &programme.tasks {
        let first = task.first_service.as_ref();
        let told =
            services.iter().filter(|row| row.task == task.id || first.is_some_and(|f| f.id == row.task));
        let done = events(told.collect(), task.hours, decisions, numbers);
        if let Some(first) = first {
            clocks.push(first_clock(task, first, done.first(), numbers.ahead));
        }
        clocks.push(regular_clock(task, in_service, &done, numbers.ahead, weigh));
    }
    clocks
}

fn first_clock(task: &Task, first: &FirstService, closed_by: Option<&Event>, ahead: Ahead) -> TaskClock {
    let over = closed_by.and_then(|event| event.counts.hours).map(|hours| FineHours::from(hours - first.at));
    let open = closed_by.is_none();
    TaskClock {
        task: first.id.clone(),
        first_of: Some(task.id.clone()),
        interval_hours: Some(first.at),
        counts_weighted: false,
        counts_days: false,
        lead_days: task.parts_lead_days,
        ahead,
        last: closed_by.map(|event| event.counts),
        from_hours: Some(Tenths::ZERO),
        due_hours: open.then_some(first.at),
        due_day: None,
        closed: !open,
        late_by: late(over, None),
        entered_twice: Vec::new(),
    }
}

fn regular_clock(
    task: &Task,
    in_service: Option<&InService>,
    done: &[Event],
    ahead: Ahead,
    weigh: &dyn Fn(Tenths, Tenths) -> Option<FineHours>,
) -> TaskClock {
    let start = |event: Option<&Event>| match event {
        Some(event) => (event.counts.hours, Some(event.counts.day)),
        None => (Some(Tenths::ZERO), in_service.map(|unit| unit.day)),
    };
    let due_day = |from: Option<NaiveDate>| task.months.zip(from).and_then(|(n, day)| add_months(day, n));

    let last = done.last();
    let (from_hours, from_day) = start(last);
    let late_by = last.and_then(|event| {
        let (hours, day) = start(done.iter().rev().nth(1));
        let used = hours.zip(event.counts.hours).and_then(|(from, to)| match task.counts_weighted {
            true => weigh(from, to),
            false => Some(FineHours::from(to - from)),
        });
        // A first service is judged against its own figure, on its own clock.
        let over = task.hours.zip(used).map(|(every, used)| used - FineHours::from(every));
        let days = due_day(day).map(|due| event.counts.day.signed_duration_since(due).num_days());
        late(over, days)
    });
    TaskClock {
        task: task.id.clone(),
        first_of: None,
        interval_hours: task.hours,
        counts_weighted: task.counts_weighted,
        counts_days: task.months.is_some(),
        lead_days: task.parts_lead_days,
        ahead,
        last: last.map(|event| event.counts),
        from_hours,
        due_hours: task.hours.zip(from_hours).map(|(every, from)| from + every),
        due_day: due_day(from_day),
        closed: false,
        late_by,
        entered_twice: last.map(|event| event.twice.clone()).unwrap_or_default(),
    }
}

fn late(hours: Option<FineHours>, days: Option<i64>) -> Option<LateBy> {
    let hours = hours.filter(|over| *over >= FineHours::TENTH);
    let days = days.filter(|over| *over >= 1);
    (hours.is_some() || days.is_some()).then_some(LateBy { hours, days })
}
