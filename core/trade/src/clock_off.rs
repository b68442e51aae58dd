//! How far the clock that dated an entry stood from the shop's (R13).

use serde::{Deserialize, Serialize};

/// Two exchanges that differ by more than this show a clock that moved in between: 2 minutes.
const MOVED_MS: u64 = 120_000;

/// What two exchanges say of the clock of an entry. Milliseconds: the shop's clock minus the phone's.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ClockOff {
    /// By so much at the exchange that brought it.
    By(i64),
    /// The clock moved between the two: by something from the one to the other. Nothing is corrected by it.
    Between(i64, i64),
}

impl ClockOff {
    /// By the exchange `before` the entry was written, as the entry itself carries it, and by the one that `brought`
    /// it. None where the second is not known: it was carried by another phone, or by file.
    pub fn of(before: Option<i64>, brought: Option<i64>) -> Option<ClockOff> {
        let brought = brought?;
        Some(match before.filter(|before| before.abs_diff(brought) > MOVED_MS) {
            Some(before) => ClockOff::Between(before.min(brought), before.max(brought)),
            None => ClockOff::By(brought),
        })
    }

    /// Whether it is worth a word: more than two minutes, or a clock that moved.
    pub fn is_told(self) -> bool {
        match self {
            ClockOff::By(off) => off.unsigned_abs() > MOVED_MS,
            ClockOff::Between(..) => true,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::ClockOff;

    #[test]
    fn a_clock_that_moved_between_two_exchanges_is_shown_as_a_span() {
        assert_eq!(ClockOff::of(Some(1_000), None), None);
        assert_eq!(ClockOff::of(None, Some(700_000)), Some(ClockOff::By(700_000)));
        assert_eq!(ClockOff::of(Some(0), Some(120_000)), Some(ClockOff::By(120_000)));
        assert_eq!(ClockOff::of(Some(720_000), Some(-1)), Some(ClockOff::Between(-1, 720_000)));
        assert!(!ClockOff::By(120_000).is_told() && ClockOff::By(-120_001).is_told());
        assert!(ClockOff::of(Some(0), Some(120_001)).is_some_and(ClockOff::is_told));
    }
}
