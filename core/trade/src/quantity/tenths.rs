//! Hours as a meter shows them.

use std::fmt;
use std::ops::{Add, Neg, Sub};
use std::str::FromStr;

use minicbor::{CborLen, Decode, Encode};
use schemars::JsonSchema;
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

/// Hours in whole tenths: the figure an hour meter shows, and any difference of two such figures.
///
/// An integer inside, so that 2,862.4 is exact and two sums in another order agree.
/// On the wire an integer of tenths; in JSON the text `"2862.4"`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Encode, Decode, CborLen)]
#[cbor(transparent)]
pub struct Tenths(#[n(0)] pub i64);

impl Tenths {
    /// No hours.
    pub const ZERO: Tenths = Tenths(0);

    /// Whole hours as tenths.
    pub const fn hours(hours: i64) -> Tenths {
        Tenths(hours.saturating_mul(10))
    }

    /// Hours as a fraction, for arithmetic that needs one (slopes, rates).
    pub fn as_hours(self) -> f64 {
        // Exact below 2^53 tenths, far beyond any meter.
        self.0 as f64 / 10.0
    }

    /// The distance between two figures, never negative.
    pub fn apart(self, other: Tenths) -> Tenths {
        Tenths(self.0.saturating_sub(other.0).saturating_abs())
    }
}

impl Add for Tenths {
    type Output = Tenths;
    fn add(self, other: Tenths) -> Tenths {
        Tenths(self.0.saturating_add(other.0))
    }
}

impl Sub for Tenths {
    type Output = Tenths;
    fn sub(self, other: Tenths) -> Tenths {
        Tenths(self.0.saturating_sub(other.0))
    }
}

impl Neg for Tenths {
    type Output = Tenths;
    fn neg(self) -> Tenths {
        Tenths(self.0.saturating_neg())
    }
}

/// One decimal, always: `2862.4`, `-0.1`.
impl fmt::Display for Tenths {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        let n = self.0.unsigned_abs();
        f.pad_integral(true, "", &format!("{sign}{}.{}", n / 10, n % 10))
    }
}

/// Why a text is not hours with at most one decimal.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("'{0}' is not hours with at most one decimal, such as 2862.4")]
pub struct TenthsError(pub String);

impl FromStr for Tenths {
    type Err = TenthsError;
    fn from_str(text: &str) -> Result<Tenths, TenthsError> {
        let wrong = || TenthsError(text.chars().take(40).collect());
        let digits = text.strip_prefix('-').unwrap_or(text);
        let (whole, tenth) = digits.split_once('.').unwrap_or((digits, "0"));
        let plain = |s: &str| !s.is_empty() && s.bytes().all(|b| b.is_ascii_digit());
        if !plain(whole) || !plain(tenth) || tenth.len() != 1 || whole.len() > 12 {
            return Err(wrong());
        }
        let whole: i64 = whole.parse().map_err(|_| wrong())?;
        let tenth: i64 = tenth.parse().map_err(|_| wrong())?;
        let n = whole * 10 + tenth;
        Ok(Tenths(if text.starts_with('-') { -n } else { n }))
    }
}

impl Serialize for Tenths {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Tenths {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Tenths, D::Error> {
        let text = String::deserialize(deserializer)?;
        text.parse().map_err(de::Error::custom)
    }
}

impl JsonSchema for Tenths {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Tenths".into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "type": "string",
            "pattern": "^-?[0-9]{1,12}(\\.[0-9])?$",
            "description": "Hours with at most one decimal, as text: \"2862.4\""
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_meter_figure_reads_and_writes_itself() {
        for text in ["2862.4", "0.0", "-0.1", "7421.0"] {
            assert_eq!(text.parse::<Tenths>().unwrap().to_string(), text);
        }
        assert_eq!("38".parse::<Tenths>(), Ok(Tenths(380)));
    }

    #[test]
    fn what_a_meter_cannot_show_is_refused() {
        for text in ["", ".", "1.", ".5", "1.25", "1,204.7", "12 h", "--1", "+1", "99999999999999"] {
            assert!(text.parse::<Tenths>().is_err(), "{text}");
        }
    }

    #[test]
    fn differences_are_exact() {
        let left = Tenths(29180) - Tenths(28624);
        assert_eq!(left.to_string(), "55.6");
        assert_eq!(left.as_hours(), 55.6);
    }
}
