//! The day on which hours run out: earliest, likely, latest.

use chrono::{DateTime, FixedOffset, NaiveDate, TimeDelta};
use chrono_tz::Tz;
use serde::{Deserialize, Serialize};

use super::pace::Pace;
use super::week::Week;
use crate::clock::FineHours;

/// When hours run out at this pace, as days of the yard.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct RunsOut {
    /// Not before this day, 9 times in 10.
    pub earliest: NaiveDate,
    /// The likely day.
    pub likely: NaiveDate,
    /// Not after this day, 9 times in 10; `None` when it lies more than ten years ahead.
    pub latest: Option<NaiveDate>,
}

impl RunsOut {
    /// The likely day lies before today: no hours that count were told since it, and the next figure decides.
    pub fn gone_by(&self, today: NaiveDate) -> bool {
        self.likely < today
    }
}

/// Days beyond which no day is named.
const FARTHEST: f64 = 3_660.0;

impl Pace {
    /// When `left` hours, counted from the last accepted reading, run out; `zone` is the yard's.
    ///
    /// `None` at a pace of zero, when nothing is left, or when the likely day lies more than ten years ahead.
    /// The likely day is the last reading's moment and left / pace. The band is where the hours run out 8
    /// times in 10: left plus and minus 1.28 spreads of a day's use, growing with the root of the days, walked
    /// through the weekdays where there is a week. It always holds the likely day.
    pub fn runs_out(&self, left: FineHours, zone: Tz) -> Option<RunsOut> {
        let left = left.as_hours();
        let days = left / self.per_day;
        // At a pace of zero the days are infinite.
        if left <= 0.0 || days.is_nan() || days > FARTHEST {
            return None;
        }
        let likely = day_after(self.last.at, days, zone)?;
        let margin = self.numbers.spreads * self.spread;
        let (earliest, latest) = match self.week.zip(Week::first_open_day(self.last.at, zone)) {
            Some((week, first)) => {
                let walk = |sign: f64| walked(&week, first, left, sign * margin);
                (walk(1.0), walk(-1.0))
            }
            None => {
                let reach = |sign: f64| {
                    let days = reached(left, self.per_day, sign * margin);
                    (days <= FARTHEST).then(|| day_after(self.last.at, days, zone)).flatten()
                };
                (reach(1.0), reach(-1.0))
            }
        };
        Some(RunsOut {
            earliest: earliest.map_or(likely, |day| day.min(likely)),
            likely,
            latest: latest.map(|day| day.max(likely)),
        })
    }
}

/// Days until `per_day * days + margin * sqrt(days)` is `left`.
fn reached(left: f64, per_day: f64, margin: f64) -> f64 {
    let root = ((margin * margin + 4.0 * per_day * left).sqrt() - margin) / (2.0 * per_day);
    root * root
}

/// The first day by whose end the weekdays' hours and the margin reach `left`.
fn walked(week: &Week, first: NaiveDate, left: f64, margin: f64) -> Option<NaiveDate> {
    let mut used = 0.0;
    for (n, day) in first.iter_days().take(FARTHEST as usize).enumerate() {
        used += week.on(day);
        // Rounding must not carry a whole week's sum over its last working day.
        if used + margin * ((n + 1) as f64).sqrt() >= left - 1e-9 {
            return Some(day);
        }
    }
    None
}

fn day_after(from: DateTime<FixedOffset>, days: f64, zone: Tz) -> Option<NaiveDate> {
    let on = TimeDelta::try_milliseconds((days * 86_400_000.0).round() as i64)?;
    Some(from.checked_add_signed(on)?.with_timezone(&zone).date_naive())
}
