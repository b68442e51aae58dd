//! A hose as a thing of its own: a bad one moves to the next truck if only the unit is known.

use minicbor::{CborLen, Decode, Encode};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Half an inch in micrometres, exactly (1 in = 25.4 mm).
const HALF_INCH_UM: u32 = 12_700;

/// One hose of a unit: its tag and the width inside.
#[derive(
    Clone,
    Debug,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Encode,
    Decode,
    CborLen,
    Serialize,
    Deserialize,
    JsonSchema,
)]
pub struct HoseTag {
    /// What the tag on the hose says.
    #[n(0)]
    pub tag: String,
    /// Inside diameter in micrometres: 1/2 in is 12,700. `None` is not known, never zero.
    #[n(1)]
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub inner_um: Option<u32>,
}

impl HoseTag {
    /// A hose whose width nobody has written down yet.
    pub fn unmeasured(tag: impl Into<String>) -> HoseTag {
        HoseTag { tag: tag.into(), inner_um: None }
    }

    /// A hose with its inside diameter in inches; a width that is no width is kept as not known.
    pub fn inches(tag: impl Into<String>, inner: f64) -> HoseTag {
        let um = (inner * 25_400.0).round();
        let inner_um = (um > 0.0 && um <= f64::from(u32::MAX)).then_some(um as u32);
        HoseTag { tag: tag.into(), inner_um }
    }

    /// Whether it is known to be wider than 1/2 in inside, so that a tool on it wants a device
    /// that cuts the flow when the hose fails (29 CFR 1926.302(b)(7)).
    pub fn over_half_inch(&self) -> bool {
        self.inner_um.is_some_and(|um| um > HALF_INCH_UM)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // 29 CFR 1926.302(b)(7), letter of 6 Jun 1983: "> 1/2 in ID".
    #[test]
    fn half_an_inch_is_not_over_half_an_inch() {
        assert!(!HoseTag::inches("a", 0.5).over_half_inch());
        assert!(HoseTag::inches("a", 0.501).over_half_inch());
        assert!(HoseTag::inches("a", 0.75).over_half_inch());
    }

    #[test]
    fn a_width_that_is_none_is_not_known() {
        for inner in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert_eq!(HoseTag::inches("a", inner), HoseTag::unmeasured("a"));
        }
        assert!(!HoseTag::unmeasured("a").over_half_inch());
    }
}
