//! The numbers of R3 that a shop may edit, with the usual ones as defaults.

use serde::{Deserialize, Serialize};

use crate::quantity::Tenths;

/// Where a meter turns over to 0.0: one step past the highest figure it can show.
///
/// A meter of five digits shows 9,999.9 and then 0.0; one that counts tenths in 16 bits shows 6,553.5
/// and then 0.0. Common practice, no source.
pub const TURNS: [Tenths; 2] = [Tenths(65_536), Tenths(100_000)];

/// The numbers of R3. `Default` gives a fleet's usual ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct HoursNumbers {
    /// A run whose accepted neighbour before is older than this many days goes to a person. Usual: 14.
    pub neighbour_days: u32,
    /// How many local days back "unlike this unit" looks. Usual: 60.
    pub window_days: u32,
    /// With fewer days of use than this in the window nothing is called unlike. Usual: 10.
    pub least_use_days: u32,
    /// Which percentile of a day's rise a unit is seldom above. Usual: 90. Over 100 counts as 100.
    pub percentile: u32,
    /// How many times that percentile is unlike the unit. Usual: 2.
    pub times: u32,
}

impl Default for HoursNumbers {
    fn default() -> HoursNumbers {
        HoursNumbers { neighbour_days: 14, window_days: 60, least_use_days: 10, percentile: 90, times: 2 }
    }
}
