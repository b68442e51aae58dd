//! What a figure of the walk is given in.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Kilopascals in one psi (NIST SP 811, B.8: 6.894757).
const KPA_PER_PSI: f64 = 6.894_757_293_168_361;
/// Millimetres in one inch, by definition.
const MM_PER_INCH: f64 = 25.4;
/// Litres in one US quart (NIST SP 811, B.8).
const LITRE_PER_QUART: f64 = 0.946_352_946;

/// What a figure is given in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
pub enum Measure {
    /// Pounds per square inch, gauge.
    #[serde(rename = "psi")]
    Psi,
    /// Kilopascals, gauge.
    #[serde(rename = "kPa")]
    Kilopascal,
    /// Bar, gauge.
    #[serde(rename = "bar")]
    Bar,
    /// Inches.
    #[serde(rename = "in")]
    Inch,
    /// Thirty-seconds of an inch, as tread is read.
    #[serde(rename = "in/32")]
    ThirtySecond,
    /// Millimetres.
    #[serde(rename = "mm")]
    Millimetre,
    /// US liquid quarts.
    #[serde(rename = "qt")]
    Quart,
    /// Litres.
    #[serde(rename = "L")]
    Litre,
    /// Seconds.
    #[serde(rename = "s")]
    Second,
    /// Minutes.
    #[serde(rename = "min")]
    Minute,
    /// Hours.
    #[serde(rename = "h")]
    Hour,
    /// Whole months.
    #[serde(rename = "months")]
    Month,
    /// A date read from a tag or a paper.
    #[serde(rename = "date")]
    Date,
    /// Per cent: of the glass, of a tank.
    #[serde(rename = "%")]
    Percent,
    /// A count.
    #[serde(rename = "count")]
    Count,
    /// An extinguisher's rating for fires of class B and C.
    #[serde(rename = "B:C")]
    ClassBc,
    /// Degrees Fahrenheit.
    #[serde(rename = "degF")]
    Fahrenheit,
    /// Drops in a minute.
    #[serde(rename = "drops/min")]
    DropsPerMinute,
    /// Inches of water, across a filter.
    #[serde(rename = "inH2O")]
    InchOfWater,
    /// Drained water by eye: none, spoon, cup, more.
    #[serde(rename = "water")]
    Water,
}

impl Measure {
    /// The kind of thing measured, with the size of one of these in a common unit of that kind.
    fn size(self) -> Option<(char, f64)> {
        Some(match self {
            Measure::Psi => ('p', KPA_PER_PSI),
            Measure::Kilopascal => ('p', 1.0),
            Measure::Bar => ('p', 100.0),
            Measure::Inch => ('l', MM_PER_INCH),
            Measure::ThirtySecond => ('l', MM_PER_INCH / 32.0),
            Measure::Millimetre => ('l', 1.0),
            Measure::Quart => ('v', LITRE_PER_QUART),
            Measure::Litre => ('v', 1.0),
            Measure::Second => ('t', 1.0),
            Measure::Minute => ('t', 60.0),
            Measure::Hour => ('t', 3600.0),
            _ => return None,
        })
    }

    /// A figure given in this, told in another; `None` when the two do not measure the same thing.
    pub fn tell(self, value: f64, other: Measure) -> Option<f64> {
        if self == other {
            return Some(value);
        }
        let (kind, size) = self.size()?;
        let (other_kind, other_size) = other.size()?;
        (kind == other_kind).then(|| value * size / other_size)
    }
}
