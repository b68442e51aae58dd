//! What a finding locks.

use minicbor::{CborLen, Decode, Encode};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What a finding locks until the shop certifies it, worst first: the lesser in order is the worse.
#[derive(
    Clone,
    Copy,
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
#[cbor(index_only)]
#[serde(rename_all = "kebab-case")]
pub enum Severity {
    /// The truck is not to be driven and the air not to be used.
    #[n(0)]
    RoadAndAir,
    /// The truck is not to be driven.
    #[n(1)]
    Road,
    /// The air is not to be used.
    #[n(2)]
    Air,
    /// One outlet is not to be used.
    #[n(3)]
    Outlet,
    /// Nothing is locked; the shop is told.
    #[n(4)]
    Note,
}

impl Severity {
    /// Every severity, worst first.
    pub const ALL: [Severity; 5] =
        [Severity::RoadAndAir, Severity::Road, Severity::Air, Severity::Outlet, Severity::Note];

    /// Its key: "road-and-air".
    pub fn key(self) -> &'static str {
        match self {
            Severity::RoadAndAir => "road-and-air",
            Severity::Road => "road",
            Severity::Air => "air",
            Severity::Outlet => "outlet",
            Severity::Note => "note",
        }
    }

    /// What a finding of this may be raised to by whoever found it, the least first. It is never lowered.
    pub fn raised(self) -> Vec<Severity> {
        let all = Severity::ALL.into_iter().rev();
        // An outlet is locked by its own finding, not by raising another.
        all.filter(|to| *to != self && *to != Severity::Outlet && self.and(*to) == *to).collect()
    }

    /// Whether it keeps the truck off the road.
    pub fn locks_road(self) -> bool {
        matches!(self, Severity::RoadAndAir | Severity::Road)
    }

    /// Whether it keeps the whole of the air shut. One outlet is not the whole.
    pub fn locks_air(self) -> bool {
        matches!(self, Severity::RoadAndAir | Severity::Air)
    }

    /// Both together: road and air make road and air, else the worse.
    pub fn and(self, other: Severity) -> Severity {
        if (self.locks_road() || other.locks_road()) && (self.locks_air() || other.locks_air()) {
            Severity::RoadAndAir
        } else {
            self.min(other)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Severity::{Air, Note, Outlet, Road, RoadAndAir};

    #[test]
    fn its_key_is_how_it_is_written() {
        for severity in super::Severity::ALL {
            assert_eq!(serde_json::to_value(severity).unwrap(), severity.key());
        }
    }

    #[test]
    fn a_finding_is_raised_to_what_holds_it_and_never_lowered() {
        assert_eq!(Note.raised(), [Air, Road, RoadAndAir]);
        assert_eq!(Outlet.raised(), [Air, Road, RoadAndAir]);
        assert_eq!(Air.raised(), [RoadAndAir], "road alone would open the air");
        assert_eq!(Road.raised(), [RoadAndAir]);
        assert!(RoadAndAir.raised().is_empty());
    }
}
