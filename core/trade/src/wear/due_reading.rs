//! What weighted hours mean on this unit's own meter.

use serde::{Deserialize, Serialize};

use crate::clock::FineHours;
use crate::quantity::Tenths;

/// Where the meter will stand when weighted hours run out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct DueReading {
    /// Hours of the meter left, each counting as the last ones did; negative when past.
    pub meter_left: FineHours,
    /// What the unit's hours will be then, rounded down to the tenth: the last good figure (R14).
    pub at: Tenths,
    /// Hundredths each of these hours counts.
    pub hundredths: u32,
}

/// Reckons `left` weighted hours at `hundredths` each, from `now` hours of the unit. `None` for a weight of
/// nothing, at which hours never run out.
///
/// What is past stays past: an hour more or less dusty from now on does not change by how much.
pub fn due_reading(left: FineHours, now: Tenths, hundredths: u32) -> Option<DueReading> {
    if hundredths == 0 {
        return None;
    }
    let weight = i64::from(hundredths);
    let meter_left = FineHours(left.0.saturating_mul(100).div_euclid(weight));
    Some(DueReading { meter_left, at: now + meter_left.tenths_down(), hundredths })
}
