//! Whether a rise is unlike this unit (R3, "Unlike this unit"): a question, never a refusal.
//!
//! A day here is the local day a reading itself carries. A rise between two accepted readings belongs to
//! the day of the later one; over more than 24 real hours it is spread ("per 24 h"), over fewer it is
//! taken as it is, so that a morning's three hours are not called eighteen a day. A day on which the
//! meter stood is no day of use.

use std::collections::VecDeque;

use chrono::{DateTime, Datelike, FixedOffset};

use super::numbers::HoursNumbers;
use super::span::{DAY, Point};
use crate::quantity::Tenths;

/// The local day a reading carries, as a running number.
pub(super) fn local_day(at: DateTime<FixedOffset>) -> i32 {
    at.naive_local().num_days_from_ce()
}

/// A rise as hours per 24 hours, to the nearest tenth.
pub(super) fn per_day(before: Point, after: Point) -> Tenths {
    let elapsed = (after.instant - before.instant).max(DAY);
    let rise = before.rise_to(after);
    Tenths(i64::try_from((rise * DAY * 2 + elapsed) / (elapsed * 2)).unwrap_or(i64::MAX))
}

/// Rises on the days of use in the window, kept sorted while readings go by.
#[derive(Debug, Default)]
pub(super) struct DaysOfUse {
    today: Option<(i32, Tenths)>,
    days: VecDeque<(i32, Tenths)>,
    sorted: Vec<Tenths>,
}

impl DaysOfUse {
    /// Moves on to `day`: days before it are finished, days that left the window are dropped.
    pub(super) fn turn_to(&mut self, day: i32, window_days: u32) {
        if let Some((finished, rise)) = self.today.take_if(|(today, _)| *today < day)
            && rise > Tenths::ZERO
        {
            self.days.push_back((finished, rise));
            let place = self.sorted.partition_point(|r| *r < rise);
            self.sorted.insert(place, rise);
        }
        let oldest = i64::from(day) - i64::from(window_days);
        while let Some(&(_, rise)) = self.days.front().filter(|(d, _)| i64::from(*d) < oldest) {
            self.days.pop_front();
            if let Ok(place) = self.sorted.binary_search(&rise) {
                self.sorted.remove(place);
            }
        }
    }

    /// Adds a rise to `day`. A reading whose own day lies before the last one's counts with that.
    pub(super) fn add(&mut self, day: i32, rise: Tenths) {
        let (_, sum) = self.today.get_or_insert((day, Tenths::ZERO));
        *sum = *sum + rise;
    }

    /// Rises of the finished days of use, lowest first.
    pub(super) fn sorted(&self) -> &[Tenths] {
        &self.sorted
    }
}

/// The rise a unit is seldom above, in hundredths of an hour: the percentile by R-7 (Hyndman and Fan,
/// type 7: linear between the two nearest of the sorted values). `None` with too few days of use.
fn seldom_above_hundredths(sorted: &[Tenths], numbers: &HoursNumbers) -> Option<i128> {
    if sorted.is_empty() || sorted.len() < numbers.least_use_days as usize {
        return None;
    }
    let place = (sorted.len() - 1) * numbers.percentile.min(100) as usize;
    let low = i128::from(sorted.get(place / 100)?.0);
    let high = sorted.get(place / 100 + 1).map_or(low, |r| i128::from(r.0));
    let part = (place % 100) as i128;
    Some(low * 10 + (high - low) * part / 10)
}

/// What `rise per 24 h` is seldom above, when `before` to `after` is beyond so many times that.
pub(super) fn unlike(
    before: Point,
    after: Point,
    sorted: &[Tenths],
    numbers: &HoursNumbers,
) -> Option<(Tenths, Tenths)> {
    let seldom = seldom_above_hundredths(sorted, numbers)?;
    let elapsed = (after.instant - before.instant).max(DAY);
    // Compared unrounded: exactly twice is not beyond twice.
    let beyond = before.rise_to(after).checked_mul(10 * DAY)?
        > seldom.checked_mul(elapsed)?.checked_mul(i128::from(numbers.times))?;
    let shown = i64::try_from((seldom + 5) / 10).unwrap_or(i64::MAX);
    beyond.then(|| (per_day(before, after), Tenths(shown)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_percentile_lies_between_the_two_nearest_values() {
        let numbers = HoursNumbers::default();
        let rises: Vec<Tenths> = (1..=10).map(|n| Tenths(n * 10)).collect();
        // (10 - 1) * 0.9 = 8.1: a tenth of the way from the 9th value to the 10th.
        assert_eq!(seldom_above_hundredths(&rises, &numbers), Some(910));
        assert_eq!(seldom_above_hundredths(&rises[..9], &numbers), None);
        let eleven: Vec<Tenths> = (1..=11).map(|n| Tenths(n * 10)).collect();
        assert_eq!(seldom_above_hundredths(&eleven, &numbers), Some(1000));
    }

    #[test]
    fn exactly_twice_is_not_unlike() {
        let numbers = HoursNumbers::default();
        let rises = vec![Tenths(50); 10];
        let before = Point { total: Tenths(1000), instant: 0 };
        let after = |total| Point { total: Tenths(total), instant: DAY };
        assert_eq!(unlike(before, after(1100), &rises, &numbers), None);
        assert_eq!(unlike(before, after(1101), &rises, &numbers), Some((Tenths(101), Tenths(50))));
    }

    #[test]
    fn a_short_span_is_not_blown_up_and_a_long_one_is_spread() {
        let before = Point { total: Tenths(0), instant: 0 };
        assert_eq!(per_day(before, Point { total: Tenths(32), instant: DAY / 8 }), Tenths(32));
        assert_eq!(per_day(before, Point { total: Tenths(90), instant: DAY * 3 }), Tenths(30));
    }
}
