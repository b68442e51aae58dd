//! A scale: from figures to a share of the length, and the figures worth naming on it.

use chrono::{DateTime, Datelike, FixedOffset, NaiveDate};
use plotters::coord::ranged1d::{BoldPoints, Ranged};
use plotters::coord::types::RangedCoordf64;

/// One axis.
pub(in crate::console) struct Scale {
    range: RangedCoordf64,
    ticks: Vec<(f64, String)>,
}

/// Shares are told in so many parts.
const PARTS: i32 = 1_000_000;
/// Left free at each end, as a share of the range: no mark stands half outside.
const FREE: f64 = 0.04;

impl Scale {
    /// From the least to the greatest of these, with about so many names.
    pub(in crate::console) fn of(figures: &[f64], names: usize, name: impl Fn(f64) -> String) -> Scale {
        let finite = || figures.iter().copied().filter(|figure| figure.is_finite());
        let (low, high) = (finite().fold(f64::MAX, f64::min), finite().fold(f64::MIN, f64::max));
        let (low, high) = if low <= high { (low, high) } else { (0.0, 1.0) };
        // A single figure still stands on a scale.
        let free = if low < high { (high - low) * FREE } else { 0.5 };
        let range = RangedCoordf64::from(low - free..high + free);
        let ticks = range.key_points(BoldPoints(names));
        let ticks = ticks.into_iter().filter(|at| *at >= low - free && *at <= high + free);
        let ticks = ticks.map(|at| (at, name(at))).collect();
        Scale { range, ticks }
    }

    /// Days, named by the whole ones among them.
    pub(in crate::console) fn of_days(
        days: &[f64],
        names: usize,
        name: impl Fn(NaiveDate) -> String,
    ) -> Scale {
        let mut scale = Scale::of(days, names, |_| String::new());
        let whole = |at: f64| (at - at.round()).abs() < 1e-6;
        let named = |at: f64| NaiveDate::from_num_days_from_ce_opt(at.round() as i32).map(&name);
        scale.ticks = std::mem::take(&mut scale.ticks)
            .into_iter()
            .filter(|(at, _)| whole(*at))
            .filter_map(|(at, _)| Some((at, named(at)?)))
            .collect();
        scale
    }

    /// Where a figure stands, 0 to 1 from the low end.
    pub(super) fn share(&self, figure: f64) -> f64 {
        f64::from(self.range.map(&figure, (0, PARTS))) / f64::from(PARTS)
    }

    /// Figures worth naming, with their names.
    pub(super) fn ticks(&self) -> &[(f64, String)] {
        &self.ticks
    }
}

/// A moment as days, by the yard's clock.
pub(in crate::console) fn days(at: DateTime<FixedOffset>, zone: chrono_tz::Tz) -> f64 {
    let there = at.with_timezone(&zone).naive_local();
    let seconds = chrono::Timelike::num_seconds_from_midnight(&there.time());
    f64::from(there.date().num_days_from_ce()) + f64::from(seconds) / 86_400.0
}

/// Days that a chart shows, where that leaves it something to show.
const SHOWN: f64 = 90.0;

/// How many of these days, oldest first, lie before what is shown.
pub(in crate::console) fn before_shown(days: &[f64]) -> usize {
    let newest = days.iter().copied().fold(f64::MIN, f64::max);
    let old = days.iter().filter(|day| **day < newest - SHOWN).count();
    if days.len().saturating_sub(old) < 3 { 0 } else { old }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_stand_where_they_belong_and_round_ones_are_named() {
        let scale = Scale::of(&[0.0, 100.0], 5, |at| format!("{at:.0}"));
        assert!((scale.share(50.0) - 0.5).abs() < 1e-6);
        assert!(scale.share(0.0) > 0.0 && scale.share(100.0) < 1.0);
        let names: Vec<&str> = scale.ticks().iter().map(|(_, name)| name.as_str()).collect();
        assert!(names.contains(&"0") && names.contains(&"100"), "{names:?}");
    }

    #[test]
    fn one_figure_and_none_still_make_a_scale() {
        let one = Scale::of(&[7.0], 4, |at| at.to_string());
        assert!((one.share(7.0) - 0.5).abs() < 1e-6);
        assert!((Scale::of(&[f64::NAN], 4, |at| at.to_string()).share(0.5) - 0.5).abs() < 1e-6);
    }

    #[test]
    fn days_are_named_whole() {
        let at: DateTime<FixedOffset> = "2026-10-26T07:05:00-06:00".parse().unwrap();
        let first = days(at, chrono_tz::America::Denver);
        let scale = Scale::of_days(&[first, first + 1.5], 6, |day| day.to_string());
        let names: Vec<&str> = scale.ticks().iter().map(|(_, name)| name.as_str()).collect();
        assert_eq!(names, ["2026-10-27"]);
    }

    #[test]
    fn what_is_long_ago_does_not_squeeze_the_last_weeks() {
        assert_eq!(before_shown(&[0.0, 200.0, 210.0, 220.0]), 1);
        assert_eq!(before_shown(&[0.0, 200.0, 210.0]), 0, "two points are no picture");
        assert_eq!(before_shown(&[]), 0);
    }
}
