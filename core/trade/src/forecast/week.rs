//! Which days of the week a unit works, where its readings show it.

use std::collections::BTreeMap;

use chrono::{DateTime, Datelike, FixedOffset, NaiveDate, Timelike};
use chrono_tz::Tz;
use serde::{Deserialize, Serialize};

use super::pace::HoursAt;

/// What is used on each day of the week.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Week {
    /// Hours on a Monday, a Tuesday and so on to Sunday.
    pub use_on: [f64; 7],
    /// How far one day's use lies from that of its weekday: the root of its mean square, hours.
    pub spread: f64,
}

/// Days without any reading that still count as days of no use: a long weekend. A longer gap tells nothing.
const LONGEST_GAP: i64 = 5;

/// Each weekday must have been seen so many times.
const LEAST_OF_EACH: usize = 3;

/// A week is clear when the weekdays account for at least this share of what days differ by.
const CLEAR_SHARE: f64 = 0.5;

/// The day's work a reading closes: one taken before noon, local time, still tells of the day before.
fn works_day(at: DateTime<FixedOffset>, zone: Tz) -> NaiveDate {
    let local = at.with_timezone(&zone);
    let day = local.date_naive();
    if local.hour() < 12 { day.pred_opt().unwrap_or(day) } else { day }
}

impl Week {
    /// The week that accepted readings show; `None` when they are not daily, too few, or show none.
    ///
    /// A unit is not used without a pre-trip, so a day without a reading between two is a day of no use.
    pub(super) fn of(readings: &[HoursAt], zone: Tz) -> Option<Week> {
        let days = daily_use(readings, zone);
        let mut of_each: [Vec<f64>; 7] = Default::default();
        for (day, used) in &days {
            of_each.get_mut(weekday(*day))?.push(*used);
        }
        if of_each.iter().any(|of| of.len() < LEAST_OF_EACH) {
            return None;
        }
        let mean = |of: &[f64]| of.iter().sum::<f64>() / of.len() as f64;
        let use_on = of_each.each_ref().map(|of| mean(of));
        let all: Vec<f64> = days.values().copied().collect();
        let about = |of: &[f64], middle: f64| of.iter().map(|used| (used - middle).powi(2)).sum::<f64>();
        let total = about(&all, mean(&all));
        let within: f64 = of_each.iter().zip(use_on).map(|(of, middle)| about(of, middle)).sum();
        let clear = total > 0.0 && 1.0 - within / total >= CLEAR_SHARE;
        let freedom = all.len().saturating_sub(7).max(1) as f64;
        clear.then_some(Week { use_on, spread: (within / freedom).sqrt() })
    }

    /// The same shape with the hours of a whole week as the pace has them.
    pub(super) fn at_pace(self, per_day: f64) -> Week {
        let whole: f64 = self.use_on.iter().sum();
        let scale = if whole > 0.0 { 7.0 * per_day / whole } else { 0.0 };
        Week { use_on: self.use_on.map(|used| used * scale), ..self }
    }

    /// What is used on a day.
    pub fn on(&self, day: NaiveDate) -> f64 {
        self.use_on.get(weekday(day)).copied().unwrap_or(0.0)
    }

    /// The first day whose work a reading does not tell of yet.
    pub(super) fn first_open_day(last: DateTime<FixedOffset>, zone: Tz) -> Option<NaiveDate> {
        works_day(last, zone).succ_opt()
    }
}

fn weekday(day: NaiveDate) -> usize {
    day.weekday().num_days_from_monday() as usize
}

/// Hours used on each of the yard's days that the readings tell of.
fn daily_use(readings: &[HoursAt], zone: Tz) -> BTreeMap<NaiveDate, f64> {
    let mut days: BTreeMap<NaiveDate, f64> = BTreeMap::new();
    let mut before: Option<(NaiveDate, &HoursAt)> = None;
    for reading in readings {
        let day = works_day(reading.at, zone);
        if let Some((since, earlier)) = before {
            let rise = (reading.total - earlier.total).as_hours();
            let gap = day.signed_duration_since(since).num_days();
            if gap <= LONGEST_GAP {
                for idle in since.iter_days().skip(1).take_while(|idle| *idle < day) {
                    days.entry(idle).or_insert(0.0);
                }
                *days.entry(day).or_default() += rise;
            }
        }
        before = Some((day, reading));
    }
    days
}
