//! Hours finer than a meter shows.

use serde::{Deserialize, Serialize};
use std::fmt;
use std::ops::{Add, Neg, Sub};

use crate::quantity::Tenths;

/// Hours in whole ten-thousandths: what weighted hours come to (a tenth times a weight in thousandths).
///
/// Exact, because the border of "past due" is judged on the unrounded figure: 0.0999 h over is due,
/// 0.1 h over is past due (R1).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct FineHours(pub i64);

impl FineHours {
    /// No hours.
    pub const ZERO: FineHours = FineHours(0);
    /// The tenth from which a task is past due.
    pub const TENTH: FineHours = FineHours(1_000);

    /// Meter hours times a weight in thousandths: 1,500 counts each hour as one and a half (R10).
    pub const fn weighted(hours: Tenths, thousandths: u32) -> FineHours {
        FineHours(hours.0.saturating_mul(thousandths as i64))
    }

    /// The tenth at or below: how "at least left" is shown (R14).
    pub const fn tenths_down(self) -> Tenths {
        Tenths(self.0.div_euclid(1_000))
    }

    /// The tenth at or above: how "used up" is shown (R14).
    pub const fn tenths_up(self) -> Tenths {
        Tenths(self.0.saturating_neg().div_euclid(1_000).saturating_neg())
    }

    /// Hours as a fraction, for a pace or a ruler.
    pub fn as_hours(self) -> f64 {
        self.0 as f64 / 10_000.0
    }
}

impl From<Tenths> for FineHours {
    fn from(hours: Tenths) -> FineHours {
        FineHours::weighted(hours, 1_000)
    }
}

impl Add for FineHours {
    type Output = FineHours;
    fn add(self, other: FineHours) -> FineHours {
        FineHours(self.0.saturating_add(other.0))
    }
}

impl Sub for FineHours {
    type Output = FineHours;
    fn sub(self, other: FineHours) -> FineHours {
        FineHours(self.0.saturating_sub(other.0))
    }
}

impl Neg for FineHours {
    type Output = FineHours;
    fn neg(self) -> FineHours {
        FineHours(self.0.saturating_neg())
    }
}

/// As many decimals as it needs, at least one: `55.6`, `2.85`, `-0.0999`.
impl fmt::Display for FineHours {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let n = self.0.unsigned_abs();
        let decimals = format!("{:04}", n % 10_000);
        let trimmed = decimals.trim_end_matches('0');
        let shown = if trimmed.is_empty() { "0" } else { trimmed };
        let sign = if self.0 < 0 { "-" } else { "" };
        f.pad_integral(true, "", &format!("{sign}{}.{shown}", n / 10_000))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dusty_hours_weigh_more() {
        assert_eq!(FineHours::weighted(Tenths(61), 1_500).to_string(), "9.15");
        assert_eq!(FineHours::from(Tenths(556)).to_string(), "55.6");
        assert_eq!(FineHours(-999).to_string(), "-0.0999");
        assert_eq!(FineHours::ZERO.to_string(), "0.0");
    }

    #[test]
    fn what_is_left_is_shown_no_larger_and_what_is_used_no_smaller() {
        let left = FineHours(28_500);
        assert_eq!(left.tenths_down(), Tenths(28));
        assert_eq!(left.tenths_up(), Tenths(29));
        assert_eq!(FineHours(-999).tenths_down(), Tenths(-1));
        assert_eq!(FineHours(-999).tenths_up(), Tenths(0));
    }

    #[test]
    fn the_largest_figures_do_not_wrap() {
        assert_eq!(FineHours::weighted(Tenths(i64::MAX), 2_000), FineHours(i64::MAX));
        assert_eq!(-FineHours(i64::MIN), FineHours(i64::MAX));
    }
}
