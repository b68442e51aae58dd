//! One limit, with its figures filled in, and the question whether a figure keeps it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Measure;

/// How a rule compares. "Not more than 2" and "less than 2" part at 2.0, so the rule says which.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Comparator {
    /// The limit itself keeps it.
    AtMost,
    /// The limit itself does not.
    LessThan,
    /// The limit itself keeps it.
    AtLeast,
    /// The limit itself does not.
    MoreThan,
    /// From one end to the other, both ends included.
    Within,
}

/// A limit for one case: comparator, figures, unit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Limit {
    /// How it compares.
    pub is: Comparator,
    /// The figure; of a band the lower end.
    pub low: f64,
    /// The upper end of a band; else the same figure.
    pub high: f64,
    /// What both are given in.
    pub unit: Measure,
}

/// Figures are compared in whole millionths of the limit's unit: no gauge of the trade reads
/// finer, and 3.175 mm told in 32nds of an inch is 4 there and not 4 less a rounding.
fn millionths(value: f64) -> f64 {
    (value * 1e6).round()
}

impl Limit {
    /// Whether a figure, in the limit's own unit, keeps the limit. What is no number does not.
    pub fn holds(&self, value: f64) -> bool {
        let (value, low, high) = (millionths(value), millionths(self.low), millionths(self.high));
        value.is_finite()
            && match self.is {
                Comparator::AtMost => value <= high,
                Comparator::LessThan => value < high,
                Comparator::AtLeast => value >= low,
                Comparator::MoreThan => value > low,
                Comparator::Within => value >= low && value <= high,
            }
    }

    /// The same of a figure given in another unit; `None` when that unit measures something else.
    pub fn holds_in(&self, value: f64, unit: Measure) -> Option<bool> {
        unit.tell(value, self.unit).map(|value| self.holds(value))
    }
}
