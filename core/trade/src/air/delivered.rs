//! What a compressor delivers where it stands.

use uom::si::f64::VolumeRate;

use super::atmosphere::{Intake, density_ratio};

/// Rated delivery told in free air of the standard sea level: a screw keeps its swept volume, and thin, warm or
/// damp air is less air.
pub fn delivered(rated: VolumeRate, intake: &Intake) -> VolumeRate {
    rated * density_ratio(intake)
}
