//! How many hours a day the unit runs, from its last readings.

use chrono::{DateTime, FixedOffset};
use chrono_tz::Tz;
use serde::{Deserialize, Serialize};

use super::week::Week;
use crate::quantity::Tenths;
use crate::statistics::TheilSen;

/// Hours of the unit at a moment: an accepted reading, carried over all exchanges of meters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct HoursAt {
    /// When it was read.
    pub at: DateTime<FixedOffset>,
    /// Hours of the unit.
    pub total: Tenths,
}

/// The numbers of the forecast, the shop's to edit. `Default` gives a fleet's usual ones.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct ForecastNumbers {
    /// Readings of so many days before the last one are looked at. Usual: 60.
    pub window_days: u32,
    /// With fewer readings the pace is unknown. Usual: 3.
    pub least_readings: usize,
    /// With readings over fewer days the pace is unknown. Usual: 5.
    pub least_days: f64,
    /// Spreads to either side of the likely end. Usual: 1.28, which holds the true day 8 times in 10.
    pub spreads: f64,
    /// A last reading older than this says nothing of today's pace. Usual: 60 days.
    pub stale_days: u32,
}

impl Default for ForecastNumbers {
    fn default() -> ForecastNumbers {
        ForecastNumbers { window_days: 60, least_readings: 3, least_days: 5.0, spreads: 1.28, stale_days: 60 }
    }
}

/// Why no pace is known. Unknown is never zero (R14).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
#[serde(rename_all = "kebab-case")]
pub enum PaceUnknown {
    /// Too few readings in the window.
    #[error("too few readings")]
    TooFewReadings,
    /// The readings lie too near together.
    #[error("the readings lie over too few days")]
    TooFewDays,
}

/// How a unit runs, as its last readings show it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Pace {
    /// The last accepted reading: where a forecast starts.
    pub last: HoursAt,
    /// Hours for each 24 h, the Theil-Sen slope; never below zero.
    pub per_day: f64,
    /// Sen's 90 % interval of it, hours for each 24 h.
    pub between: (f64, f64),
    /// How far one day's use lies from the pace: the root of its mean square, hours.
    pub spread: f64,
    /// How many readings it stands on.
    pub readings: usize,
    /// Over how many real days they lie.
    pub days: f64,
    /// Which days of the week are worked, where daily readings show it clearly.
    pub week: Option<Week>,
    /// The numbers it was worked with.
    pub numbers: ForecastNumbers,
}

/// The deviate of a 90 % interval.
const NINETY: f64 = 1.645;

/// Real days between two moments, whatever the wall clock did.
pub(super) fn days_between(from: DateTime<FixedOffset>, to: DateTime<FixedOffset>) -> f64 {
    to.signed_duration_since(from).num_milliseconds() as f64 / 86_400_000.0
}

/// The pace of `readings`, which are the accepted ones, oldest first. `zone` is the yard's.
///
/// # Errors
/// Fewer than 3 readings, or over fewer than 5 days, in the 60 days before the last one.
pub fn pace(readings: &[HoursAt], zone: Tz, numbers: ForecastNumbers) -> Result<Pace, PaceUnknown> {
    let last = *readings.last().ok_or(PaceUnknown::TooFewReadings)?;
    let within = |r: &HoursAt| days_between(r.at, last.at) <= f64::from(numbers.window_days);
    let recent = readings.get(readings.partition_point(|r| !within(r))..).unwrap_or_default();
    let days = recent.first().map_or(0.0, |first| days_between(first.at, last.at));
    if recent.len() < numbers.least_readings {
        return Err(PaceUnknown::TooFewReadings);
    }
    if days < numbers.least_days {
        return Err(PaceUnknown::TooFewDays);
    }
    let point = |r: &HoursAt| (-days_between(r.at, last.at), (r.total - last.total).as_hours());
    let points: Vec<(f64, f64)> = recent.iter().map(point).collect();
    let line = TheilSen::of(&points).ok_or(PaceUnknown::TooFewDays)?;
    let per_day = line.slope().max(0.0);
    let (low, high) = line.interval(NINETY);
    let week = Week::of(recent, zone).map(|week| week.at_pace(per_day));
    Ok(Pace {
        last,
        per_day,
        between: (low.max(0.0), high.max(0.0)),
        spread: week.map_or_else(|| spread(&points, per_day), |week| week.spread),
        readings: recent.len(),
        days,
        week,
        numbers,
    })
}

/// Readings nearer together than this share of a day are no day's use.
const NEARLY_A_DAY: f64 = 0.75;

/// The root of the mean square of a day's use about the pace, from readings any time apart: what gathers over
/// several days is laid on each of them, and two readings of one shift are passed over.
fn spread(points: &[(f64, f64)], per_day: f64) -> f64 {
    let (mut squares, mut steps) = (0.0, 0.0);
    let mut before: Option<(f64, f64)> = None;
    for &(x, y) in points {
        let Some((x0, y0)) = before else {
            before = Some((x, y));
            continue;
        };
        let days = x - x0;
        if days >= NEARLY_A_DAY {
            squares += (y - y0 - per_day * days).powi(2) / days;
            steps += 1.0;
            before = Some((x, y));
        }
    }
    if steps > 0.0 { (squares / steps).sqrt() } else { 0.0 }
}

impl Pace {
    /// Whether the last reading is too old to say how the unit runs at `now`.
    pub fn stale_at(&self, now: DateTime<FixedOffset>) -> bool {
        days_between(self.last.at, now) > f64::from(self.numbers.stale_days)
    }
}
