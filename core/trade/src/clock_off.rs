//! How far the clock that dated an entry stood from the shop's (R13).

use serde::{Deserialize, Serialize};

/// What two exchanges say of the clock of an entry. Milliseconds: the shop's clock minus the phone's.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ClockOff {
    /// By so much at the exchange that brought it.
    By(i64),
    /// The clock moved between the two: by something from the one to the other. Nothing is corrected by it.
    Between(i64, i64),
    /// No exchange measured it, but the entry is dated after the moment it came: the phone's clock was ahead by so much or more.
    AheadBy(i64),
}

impl ClockOff {
    /// By the exchange `before` the entry was written, as the entry itself carries it, and by the one that `brought`
    /// it. Two exchanges that differ by more than `untold_ms` show a clock that moved in between.
    /// None where the second is not known: it was carried by another phone, or by file.
    pub fn of(before: Option<i64>, brought: Option<i64>, untold_ms: u64) -> Option<ClockOff> {
        let brought = brought?;
        Some(match before.filter(|before| before.abs_diff(brought) > untold_ms) {
            Some(before) => ClockOff::Between(before.min(brought), before.max(brought)),
            None => ClockOff::By(brought),
        })
    }

    /// By the moment an entry is dated and the moment it came, both milliseconds since 1970 UTC, where no exchange tells more.
    pub fn by_coming(dated_ms: i64, came_ms: i64) -> Option<ClockOff> {
        Some(dated_ms.saturating_sub(came_ms)).filter(|ahead| *ahead > 0).map(ClockOff::AheadBy)
    }

    /// Whether it is worth a word: by more than `untold_ms`, or a clock that moved.
    pub fn is_told(self, untold_ms: u64) -> bool {
        match self {
            ClockOff::By(off) | ClockOff::AheadBy(off) => off.unsigned_abs() > untold_ms,
            ClockOff::Between(..) => true,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::ClockOff;

    const TWO: u64 = 120_000;

    #[test]
    fn a_clock_that_moved_between_two_exchanges_is_shown_as_a_span() {
        assert_eq!(ClockOff::of(Some(1_000), None, TWO), None);
        assert_eq!(ClockOff::of(None, Some(700_000), TWO), Some(ClockOff::By(700_000)));
        assert_eq!(ClockOff::of(Some(0), Some(120_000), TWO), Some(ClockOff::By(120_000)));
        assert_eq!(ClockOff::of(Some(720_000), Some(-1), TWO), Some(ClockOff::Between(-1, 720_000)));
        assert!(!ClockOff::By(120_000).is_told(TWO) && ClockOff::By(-120_001).is_told(TWO));
        assert!(ClockOff::of(Some(0), Some(120_001), TWO).is_some_and(|off| off.is_told(TWO)));
    }

    #[test]
    fn what_is_dated_after_it_came_shows_a_clock_that_was_ahead() {
        assert_eq!(ClockOff::by_coming(1_000, 1_000), None);
        assert_eq!(ClockOff::by_coming(1_000, 9_000), None);
        assert_eq!(ClockOff::by_coming(500_000, 100_000), Some(ClockOff::AheadBy(400_000)));
        assert!(ClockOff::AheadBy(120_001).is_told(TWO) && !ClockOff::AheadBy(120_000).is_told(TWO));
    }
}
