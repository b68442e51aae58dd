//! Something happened: people, ground or things came to harm.

use super::Digest;
use crate::Stamp;

choice! {
    /// What happened.
    pub enum HappenedWhat {
        /// Somebody was hurt.
        #[n(0)] Hurt,
        /// Something spilt.
        #[n(1)] Spill,
        /// Something was hit.
        #[n(2)] Hit,
        /// Anything else.
        #[n(3)] Other,
    }
}

record! {
    /// What happened, as far as it was told: help comes first, so nothing here is asked for. It locks nothing.
    pub struct Happened {
        /// What.
        #[n(0)] pub what: Option<HappenedWhat>,
        /// When, if not as it was written down.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(1)] pub when: Option<Stamp>,
        /// Where, in words.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(2)] pub place: Option<String>,
        /// How much of what, in words.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(3)] pub how_much: Option<String>,
        /// Who was told, in words.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(4)] pub told: Option<String>,
        /// Photos, by SHA-256.
        #[cbor(default)]
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[n(5)] pub photos: Vec<Digest>,
    }
}
