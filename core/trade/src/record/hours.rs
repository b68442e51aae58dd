//! Readings of a unit's meters.

use super::{Digest, How};
use crate::Tenths;

choice! {
    /// Which meter. Each is judged by itself and never feeds another.
    pub enum Meter {
        /// Hours of the compressor.
        #[n(0)] Compressor,
        /// Hours of the engine.
        #[n(1)] Engine,
        /// Hours with the PTO engaged.
        #[n(2)] Pto,
    }
}

record! {
    /// A meter as someone read it.
    pub struct HourReading {
        /// Which meter.
        #[n(0)] pub meter: Meter,
        /// What it showed.
        #[n(1)] pub figure: Tenths,
        /// How the figure came.
        #[n(2)] pub how: How,
        /// The phone asked about this figure and the person kept it.
        #[n(3)] pub kept_when_asked: bool,
        /// A photo of the meter.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(4)] pub photo: Option<Digest>,
    }

    /// One meter took another's place, or went round.
    pub struct MeterExchange {
        /// Which meter.
        #[n(0)] pub meter: Meter,
        /// The old meter's last figure, when it could be read.
        #[n(1)] pub old_end: Option<Tenths>,
        /// The new meter's first figure.
        #[n(2)] pub new_start: Tenths,
        /// The same meter passed its highest figure and began again.
        #[n(3)] pub went_round: bool,
    }

    /// Hours nobody could read, estimated and signed.
    pub struct HoursEstimate {
        /// Which meter.
        #[n(0)] pub meter: Meter,
        /// At least.
        #[n(1)] pub low: Tenths,
        /// Likely.
        #[n(2)] pub likely: Tenths,
        /// At most; its state is the one that counts.
        #[n(3)] pub high: Tenths,
    }
}
