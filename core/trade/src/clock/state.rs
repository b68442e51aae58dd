//! R1 and R2: how a task stands today, on the unrounded figures.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use super::fine::FineHours;
use super::task_clock::TaskClock;
use crate::quantity::Tenths;

/// How a task stands, from least to most pressing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// A first service that is behind the unit: it never returns.
    Closed,
    /// Neither clock is near its end.
    FarOff,
    /// A clock that should count has nothing to count from, and no other clock is nearer. Never "far off".
    Unknown,
    /// Within a tenth of the hours, 14 days, or the parts' lead time.
    ComingUp,
    /// Today, or this very tenth of an hour, is the last good one.
    DueToday,
    /// A clock has run out by a tenth of an hour or by a day.
    PastDue,
}

/// Which clock runs out first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Nearer {
    /// The hours clock.
    Hours,
    /// The calendar.
    Calendar,
    /// It cannot be told: the pace is not known, or a figure is missing.
    Unknown,
}

/// From where a task is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Standpoint {
    /// Hours used since the clock's start, weighted where the task counts so; `None` if not known.
    pub used: Option<FineHours>,
    /// The yard's day.
    pub today: NaiveDate,
    /// The earliest day on which the hours may run out, where the pace is known.
    pub earliest: Option<NaiveDate>,
    /// The likely day on which the hours run out, where the pace is known.
    pub likely: Option<NaiveDate>,
}

/// A task as it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct TaskState {
    /// The more pressing of its two clocks.
    pub standing: Standing,
    /// Hours left, negative when past due; `None` without an hours clock or without a figure.
    pub hours_left: Option<FineHours>,
    /// Days left, negative when past due; `None` without a calendar clock or without a day to count from.
    pub days_left: Option<i64>,
    /// The clock that runs out first.
    pub nearer: Nearer,
}

/// When a task is coming up (R2), whatever the parts' lead time. `Default` gives a fleet's usual numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Ahead {
    /// With so many percent of its hours left, or fewer. Usual: 10.
    pub percent: u32,
    /// And so many days before its last good day. Usual: 14.
    pub days: u32,
}

impl Default for Ahead {
    fn default() -> Ahead {
        Ahead { percent: 10, days: 14 }
    }
}

impl Ahead {
    /// Days ahead of a task whose parts take so many to come.
    fn days(self, lead_days: u32) -> i64 {
        i64::from(self.days.max(lead_days))
    }
}

impl TaskClock {
    /// How it stands at `hours` on the meter, each hour counted once, with no forecast.
    ///
    /// `hours` are running hours through every exchange of meters; `None` when not known.
    pub fn state(&self, hours: Option<Tenths>, today: NaiveDate) -> TaskState {
        let used = hours.zip(self.from_hours).map(|(now, from)| FineHours::from(now - from));
        self.state_from(&Standpoint { used, today, earliest: None, likely: None })
    }

    /// How it stands from a full standpoint: weighted hours and a forecast where there are any.
    pub fn state_from(&self, from: &Standpoint) -> TaskState {
        if self.closed {
            return TaskState {
                standing: Standing::Closed,
                hours_left: None,
                days_left: None,
                nearer: Nearer::Unknown,
            };
        }
        let hours_left =
            self.interval_hours.zip(from.used).map(|(every, used)| FineHours::from(every) - used);
        let days_left = self.due_day.map(|due| due.signed_duration_since(from.today).num_days());
        let by_hours = self.interval_hours.map(|every| self.by_hours(every, hours_left, from));
        let by_days = self.counts_days.then(|| by_days(days_left, self.ahead.days(self.lead_days)));
        let standing = by_hours.max(by_days).unwrap_or(Standing::Unknown);
        let nearer = nearer(by_hours, by_days, from.likely, self.due_day);
        TaskState { standing, hours_left, days_left, nearer }
    }

    fn by_hours(&self, every: Tenths, left: Option<FineHours>, from: &Standpoint) -> Standing {
        let Some(left) = left else { return Standing::Unknown };
        let lead = i64::from(self.lead_days);
        // A forecast changes no state but this one: parts must be ordered before the earliest day (R2).
        let order_now = lead > 0
            && from.earliest.is_some_and(|day| day.signed_duration_since(from.today).num_days() <= lead);
        if left <= -FineHours::TENTH {
            Standing::PastDue
        } else if left <= FineHours::ZERO {
            Standing::DueToday
        } else if self.is_near(left, every) || order_now {
            Standing::ComingUp
        } else {
            Standing::FarOff
        }
    }
}

impl TaskClock {
    /// Whether so little of its hours is left that it is coming up.
    fn is_near(&self, left: FineHours, every: Tenths) -> bool {
        let part = FineHours::from(every).0.saturating_mul(i64::from(self.ahead.percent));
        left.0.saturating_mul(100) <= part
    }

    /// Where "coming up" begins on each clock, thousandths of its interval. None on a clock the task does not have.
    pub fn coming_up_from(&self, days_from: Option<NaiveDate>) -> (Option<i64>, Option<i64>) {
        let hours = self
            .interval_hours
            .map(|_| 1_000_i64.saturating_sub(10 * i64::from(self.ahead.percent.min(100))));
        let days = days_from.zip(self.due_day).map(|(from, to)| to.signed_duration_since(from).num_days());
        let ahead = self.ahead.days(self.lead_days);
        let days = days.filter(|all| *all > 0);
        (hours, days.map(|all| all.saturating_sub(ahead).max(0).saturating_mul(1_000) / all))
    }
}

impl TaskState {
    /// The same task with its oil calling for it now, whatever is left on its clocks: at least due today.
    pub fn called(self) -> TaskState {
        match self.standing {
            Standing::Closed => self,
            standing => TaskState { standing: standing.max(Standing::DueToday), ..self },
        }
    }
}

fn by_days(left: Option<i64>, ahead: i64) -> Standing {
    match left {
        None => Standing::Unknown,
        Some(left) if left < 0 => Standing::PastDue,
        Some(0) => Standing::DueToday,
        Some(left) if left <= ahead => Standing::ComingUp,
        Some(_) => Standing::FarOff,
    }
}

/// Which of two clocks runs out first; `None` is a clock the task does not have.
///
/// With a pace the days are compared. Without one, only a clock that has run out while the other has not
/// can be named: hours and days do not compare.
pub fn nearer(
    by_hours: Option<Standing>,
    by_days: Option<Standing>,
    likely: Option<NaiveDate>,
    due_day: Option<NaiveDate>,
) -> Nearer {
    let (hours, days) = match (by_hours, by_days) {
        (Some(hours), Some(days)) => (hours, days),
        (Some(_), None) => return Nearer::Hours,
        (None, Some(_)) => return Nearer::Calendar,
        (None, None) => return Nearer::Unknown,
    };
    match (likely, due_day) {
        (Some(likely), Some(due)) if likely <= due => Nearer::Hours,
        (Some(_), Some(_)) => Nearer::Calendar,
        _ if hours >= Standing::DueToday && hours > days => Nearer::Hours,
        _ if days >= Standing::DueToday && days > hours => Nearer::Calendar,
        _ => Nearer::Unknown,
    }
}
