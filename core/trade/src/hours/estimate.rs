//! Hours nobody could read, estimated and signed: a low, a likely and a high figure (R14).

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};

use crate::clock::UnitHours;
use crate::quantity::Tenths;

/// A signed estimate of hours that ran while no meter counted them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Estimate {
    /// When it was signed.
    pub at: DateTime<FixedOffset>,
    /// At least.
    pub low: Tenths,
    /// Likely.
    pub likely: Tenths,
    /// At most; its state is the one that counts.
    pub high: Tenths,
}

impl Estimate {
    /// What a gap of so many workdays comes to: nothing at least, `likely` a day, `most` a day at most.
    pub fn of_workdays(at: DateTime<FixedOffset>, workdays: u32, likely: Tenths, most: Tenths) -> Estimate {
        let times = |a_day: Tenths| Tenths(a_day.0.max(0).saturating_mul(i64::from(workdays)));
        Estimate { at, low: Tenths::ZERO, likely: times(likely.min(most)), high: times(most) }
    }

    /// The figure that counts: the highest of the three, and never below zero, so that none can hide hours.
    pub fn at_most(&self) -> Tenths {
        self.low.max(self.likely).max(self.high).max(Tenths::ZERO)
    }

    /// Whether low, likely and high stand in that order and none is below zero.
    pub fn is_in_order(&self) -> bool {
        Tenths::ZERO <= self.low && self.low <= self.likely && self.likely <= self.high
    }
}

/// Where a unit stands with what its meters counted (`read`, at `as_of`) and what was estimated for the times
/// no meter counted. The due list goes by the high figure; the other two are shown beside it.
///
/// Estimates out of order are put into order, so that none can hide hours.
pub fn with_estimates(
    read: Tenths,
    as_of: Option<DateTime<FixedOffset>>,
    estimates: &[Estimate],
) -> UnitHours {
    let sum = |pick: fn([Tenths; 3]) -> Tenths| {
        estimates.iter().fold(read, |sum, one| {
            let mut three = [one.low, one.likely, one.high].map(|figure| figure.max(Tenths::ZERO));
            three.sort_unstable();
            sum + pick(three)
        })
    };
    let estimated = !estimates.is_empty();
    UnitHours {
        hours: Some(sum(|[_, _, high]| high)),
        likely: estimated.then(|| sum(|[_, likely, _]| likely)),
        low: estimated.then(|| sum(|[low, _, _]| low)),
        as_of,
    }
}
