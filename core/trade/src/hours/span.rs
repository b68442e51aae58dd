//! What a meter can have done between two moments (R3, the ceiling).

use chrono::{DateTime, FixedOffset};

use crate::quantity::Tenths;

/// Nanoseconds in a tenth of an hour.
const TENTH: i128 = 360_000_000_000;

/// Nanoseconds in 24 hours of real time, whatever the wall clock did.
pub(super) const DAY: i128 = 240 * TENTH;

/// Nanoseconds since 1970 in UTC. Days of 23 and 25 hours come out right because offsets are gone.
pub(super) fn instant(at: DateTime<FixedOffset>) -> i128 {
    i128::from(at.timestamp()) * 1_000_000_000 + i128::from(at.timestamp_subsec_nanos())
}

/// A total at a moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Point {
    pub(super) total: Tenths,
    pub(super) instant: i128,
}

/// How one reading comes after another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Step {
    Possible,
    AboveCeiling,
    SlippedBack,
    Backwards,
}

impl Point {
    /// The highest total a meter at this point can show at `instant`. Equal to it is possible.
    ///
    /// Real elapsed hours are rounded up, because a meter may turn its tenth at any moment of it.
    pub(super) fn ceiling(self, instant: i128) -> Tenths {
        let elapsed = (instant - self.instant).max(0);
        let tenths = (elapsed + TENTH - 1) / TENTH;
        self.total + Tenths(i64::try_from(tenths).unwrap_or(i64::MAX))
    }

    /// How `later` comes after this.
    pub(super) fn step_to(self, later: Point) -> Step {
        match self.rise_to(later) {
            _ if later.total > self.ceiling(later.instant) => Step::AboveCeiling,
            0.. => Step::Possible,
            -1 => Step::SlippedBack,
            _ => Step::Backwards,
        }
    }

    /// Whether `later` can follow this.
    pub(super) fn leads_to(self, later: Point) -> bool {
        self.step_to(later) == Step::Possible
    }

    /// Tenths from this to `later`, without saturating.
    pub(super) fn rise_to(self, later: Point) -> i128 {
        i128::from(later.total.0) - i128::from(self.total.0)
    }

    /// How far the total runs ahead of a meter that never stands: of two points the later can follow
    /// the earlier exactly when it is no lower and its lead is less than one tenth greater.
    pub(super) fn lead(self) -> i128 {
        i128::from(self.total.0) * TENTH - self.instant
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn point(total: i64, minutes: i128) -> Point {
        Point { total: Tenths(total), instant: minutes * 60_000_000_000 }
    }

    #[test]
    fn the_ceiling_is_rounded_up_and_equal_passes() {
        // 738.4 and 23 h 55: invented data, outcome worked by rule.
        let last = point(7384, 0);
        assert_eq!(last.ceiling(point(0, 1435).instant), Tenths(7624));
        assert_eq!(last.step_to(point(7624, 1435)), Step::Possible);
        assert_eq!(last.step_to(point(7625, 1435)), Step::AboveCeiling);
    }

    #[test]
    fn a_whole_tenth_is_not_rounded_further() {
        assert_eq!(point(10, 0).step_to(point(12, 12)), Step::Possible);
        assert_eq!(point(10, 0).step_to(point(13, 12)), Step::AboveCeiling);
        assert_eq!(point(10, 0).step_to(point(11, 0)), Step::AboveCeiling);
    }

    #[test]
    fn back_by_a_tenth_is_a_slip_and_by_two_is_backwards() {
        assert_eq!(point(10, 0).step_to(point(9, 60)), Step::SlippedBack);
        assert_eq!(point(10, 0).step_to(point(8, 60)), Step::Backwards);
    }

    #[test]
    fn leads_say_the_same_as_ceilings() {
        for total in 0..40 {
            for minutes in 0..40 {
                let (a, b) = (point(10, 0), point(total, minutes));
                let by_lead = b.total >= a.total && a.lead() > b.lead() - TENTH;
                assert_eq!(a.leads_to(b), by_lead, "{total} after {minutes} min");
            }
        }
    }
}
