//! A fluid of which some use is normal, and suddenly far more is used: exhaust fluid that is "thirsty".

use chrono::NaiveDate;

use crate::oil::Millilitres;
use crate::quantity::Tenths;
use crate::statistics::percentile;

/// What was filled in on one day of the yard.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Filled {
    /// The day.
    pub day: NaiveDate,
    /// The unit's hours then; none where nobody read them.
    pub hours: Option<Tenths>,
    /// All of that day.
    pub volume: Millilitres,
}

/// So many earlier uses make a usual one.
const LEAST: usize = 5;

/// More than so many times its usual is sudden.
const TIMES: f64 = 2.0;

/// Which of these fills, days in order and each once, tell of a sudden thirst: what was used since the fill before
/// is more than twice the median of at least five earlier uses, by the day, and by the running hour as well where
/// the hours are known, for a week of hard work is no fault. What a fill replaces is taken for what was used since
/// the one before. Common practice, no source.
pub fn sudden_thirst(fills: &[Filled]) -> Vec<NaiveDate> {
    let mut thirsty = Vec::new();
    let (mut by_day, mut by_hour): (Vec<f64>, Vec<f64>) = (Vec::new(), Vec::new());
    for (before, fill) in fills.iter().zip(fills.iter().skip(1)) {
        let days = (fill.day - before.day).num_days();
        let a_day = (days > 0).then(|| fill.volume.0 / days as f64);
        let hours = before.hours.zip(fill.hours).map(|(then, now)| now - then);
        let an_hour = hours.and_then(|hours| fill.volume.over(hours)).map(|rate| rate.0);
        let days_say = sudden(a_day, &by_day);
        let hours_say = sudden(an_hour, &by_hour);
        if days_say == Some(true) && hours_say != Some(false) {
            thirsty.push(fill.day);
        }
        by_day.extend(a_day);
        by_hour.extend(an_hour);
    }
    thirsty
}

/// Whether one use is far over those before it; none where too few of them are known, or it is not itself.
fn sudden(rate: Option<f64>, usual: &[f64]) -> Option<bool> {
    let rate = rate.filter(|_| usual.len() >= LEAST)?;
    let median = percentile(usual, 50.0)?;
    Some(rate > TIMES * median)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(n: u64) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 10, 1).unwrap() + chrono::Days::new(n)
    }

    /// A fill every five days, millilitres and hours of each.
    fn fills(of: &[(f64, Option<i64>)]) -> Vec<Filled> {
        let fill = |(n, (volume, hours)): (u64, &(f64, Option<i64>))| Filled {
            day: day(5 * n),
            hours: hours.map(|hours| Tenths(hours * 10)),
            volume: Millilitres(*volume),
        };
        (0..).zip(of).map(fill).collect()
    }

    // Common practice, no source.
    #[test]
    fn more_than_twice_the_usual_of_five_uses_is_sudden_and_twice_is_not() {
        let usual = [(2000.0, None); 6];
        let then = |last: f64| sudden_thirst(&fills(&[usual.as_slice(), &[(last, None)]].concat()));
        assert!(then(4000.0).is_empty());
        assert_eq!(then(4001.0), [day(30)]);
        // Five uses have six fills; with one less nothing is usual yet.
        assert!(sudden_thirst(&fills(&[&usual[1..], &[(9000.0, None)]].concat())).is_empty());
    }

    #[test]
    fn a_week_of_hard_work_is_no_fault() {
        let usual: Vec<(f64, Option<i64>)> = (0..6).map(|n| (2000.0, Some(1000 + 10 * n))).collect();
        let then = |hours: i64| sudden_thirst(&fills(&[usual.as_slice(), &[(6000.0, Some(hours))]].concat()));
        assert!(then(1080).is_empty(), "three times the fluid in three times the hours");
        assert_eq!(then(1062), [day(30)]);
    }

    #[test]
    fn no_fills_and_hours_that_stand_still_say_nothing() {
        assert!(sudden_thirst(&[]).is_empty());
        let still = [(2000.0, Some(1000)); 7];
        assert!(sudden_thirst(&fills(&still)).is_empty());
    }
}
