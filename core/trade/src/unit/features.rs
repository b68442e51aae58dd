//! Which of the things that not every unit has, this one has.

use std::collections::BTreeSet;

use minicbor::{CborLen, Decode, Encode};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::HoseTag;

/// A thing some units have. It switches on the items, steps and fluids that need it.
///
/// Numbers are the wire's: a new feature is appended, none is used again.
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
pub enum Feature {
    /// Air brakes on the truck.
    #[n(0)]
    AirBrakes,
    /// Hydraulic brakes on the truck.
    #[n(1)]
    HydraulicBrakes,
    /// Glow plugs to start the engine cold.
    #[n(2)]
    GlowPlugs,
    /// A heater in the engine's intake.
    #[n(3)]
    IntakeHeater,
    /// A diesel engine.
    #[n(4)]
    Diesel,
    /// A gasoline engine.
    #[n(5)]
    Gasoline,
    /// Diesel exhaust fluid.
    #[n(6)]
    Def,
    /// Brake air tanks that are drained by hand.
    #[n(7)]
    ManualTankDrains,
    /// A trailer is drawn.
    #[n(8)]
    Trailer,
    /// Air brakes on the trailer.
    #[n(9)]
    TrailerAir,
    /// Electric brakes on the trailer.
    #[n(10)]
    TrailerElectric,
    /// The compressor's cooler stands behind doors of the body.
    #[n(11)]
    CoolerInside,
    /// The compressor is driven by a shaft.
    #[n(12)]
    ShaftDrive,
    /// The compressor is driven by belts.
    #[n(13)]
    BeltDrive,
    /// A selector for a low and a high pressure.
    #[n(14)]
    TwoPressure,
    /// The compressor has an hour meter.
    #[n(15)]
    HourMeter,
    /// The receiver has a drain at its bottom.
    #[n(16)]
    ReceiverDrain,
    /// The compressor's temperature can be read.
    #[n(17)]
    TempShown,
    /// Hoses stand on reels.
    #[n(18)]
    HoseReels,
    /// A hose wider than 1/2 in inside.
    #[n(19)]
    HoseOverHalfInch,
    /// A filter at an air outlet.
    #[n(20)]
    OutletFilter,
    /// An oiler at an air outlet.
    #[n(21)]
    ToolOiler,
    /// Power steering with a fluid of its own.
    #[n(22)]
    PowerSteering,
    /// Hydraulics for a boom, a crane or outriggers.
    #[n(23)]
    BoomHydraulics,
    /// Clutch, gearbox or PTO case have a stick or glass a driver can read.
    #[n(24)]
    GearboxCheck,
    /// The shop still wants spare fuses aboard.
    #[n(25)]
    SpareFusesKept,
}

impl Feature {
    /// All of them, in the order of their numbers.
    pub const ALL: [Feature; 26] = [
        Feature::AirBrakes,
        Feature::HydraulicBrakes,
        Feature::GlowPlugs,
        Feature::IntakeHeater,
        Feature::Diesel,
        Feature::Gasoline,
        Feature::Def,
        Feature::ManualTankDrains,
        Feature::Trailer,
        Feature::TrailerAir,
        Feature::TrailerElectric,
        Feature::CoolerInside,
        Feature::ShaftDrive,
        Feature::BeltDrive,
        Feature::TwoPressure,
        Feature::HourMeter,
        Feature::ReceiverDrain,
        Feature::TempShown,
        Feature::HoseReels,
        Feature::HoseOverHalfInch,
        Feature::OutletFilter,
        Feature::ToolOiler,
        Feature::PowerSteering,
        Feature::BoomHydraulics,
        Feature::GearboxCheck,
        Feature::SpareFusesKept,
    ];
}

/// What one unit has: the features switched on, and its valves, reels and hoses by name.
///
/// Names are the crew's own words, in the order the crew meets them.
#[derive(
    Clone,
    Debug,
    Default,
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
#[serde(default)]
pub struct Features {
    /// The features switched on.
    #[n(0)]
    pub switched: BTreeSet<Feature>,
    /// Service valves by name: "small hose".
    #[n(1)]
    pub valves: Vec<String>,
    /// Hose reels by name.
    #[n(2)]
    pub reels: Vec<String>,
    /// Hoses by tag.
    #[n(3)]
    pub hoses: Vec<HoseTag>,
}

impl Features {
    /// Features switched on, nothing named.
    pub fn of(switched: impl IntoIterator<Item = Feature>) -> Features {
        Features { switched: switched.into_iter().collect(), ..Features::default() }
    }

    /// Whether the unit has it: switched on, or shown by what is named.
    ///
    /// A reel in the list is a reel, and a hose known to be over 1/2 in is one, whatever the switches say.
    pub fn has(&self, feature: Feature) -> bool {
        self.switched.contains(&feature)
            || match feature {
                Feature::HoseReels => !self.reels.is_empty(),
                Feature::HoseOverHalfInch => self.hoses.iter().any(HoseTag::over_half_inch),
                _ => false,
            }
    }

    /// What air leaves by, as a step at a hose names it: the hoses by their tags; the reels of a unit whose hoses
    /// have none, and the valves of one that has neither.
    pub fn outlets(&self) -> Vec<&str> {
        let named = |name: &&str| !name.trim().is_empty();
        let hoses: Vec<&str> = self.hoses.iter().map(|hose| hose.tag.as_str()).filter(named).collect();
        let reels = || self.reels.iter().map(String::as_str).filter(named).collect();
        let valves = || self.valves.iter().map(String::as_str).filter(named).collect();
        [hoses, reels(), valves()].into_iter().find(|names: &Vec<&str>| !names.is_empty()).unwrap_or_default()
    }

    /// Whether it has any one of these; nothing needed is always met.
    pub fn meets(&self, needs: &[Feature]) -> bool {
        needs.is_empty() || needs.iter().any(|need| self.has(*need))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn air_leaves_by_the_hoses_that_have_a_tag_else_by_reels_and_valves() {
        let valves = Features { valves: vec!["gauge port".into(), " ".into()], ..Features::default() };
        assert_eq!(valves.outlets(), ["gauge port"]);
        let reels = Features { reels: vec!["rear".into()], ..valves };
        assert_eq!(reels.outlets(), ["rear"]);
        let hoses = Features { hoses: vec![HoseTag::unmeasured("H-7")], ..reels };
        assert_eq!(hoses.outlets(), ["H-7"]);
        assert!(Features::default().outlets().is_empty());
    }

    #[test]
    fn the_numbers_on_the_wire_stand() {
        for (number, feature) in Feature::ALL.iter().enumerate() {
            assert_eq!(minicbor::to_vec(feature).unwrap(), minicbor::to_vec(number).unwrap(), "{feature:?}");
        }
        // Spot figures: a feature moved in the list above would move both sides of the loop.
        assert_eq!(minicbor::to_vec(Feature::AirBrakes).unwrap(), [0]);
        assert_eq!(minicbor::to_vec(Feature::TwoPressure).unwrap(), [14]);
        assert_eq!(minicbor::to_vec(Feature::SpareFusesKept).unwrap(), [0x18, 25]);
    }

    #[test]
    fn names_are_kebab_case_and_come_back() {
        assert_eq!(serde_json::to_string(&Feature::HoseOverHalfInch).unwrap(), "\"hose-over-half-inch\"");
        let features = Features {
            valves: vec!["gauge port".into()],
            hoses: vec![HoseTag::inches("H-7", 0.75)],
            ..Features::of([Feature::AirBrakes, Feature::Trailer])
        };
        let json = serde_json::to_string(&features).unwrap();
        assert_eq!(serde_json::from_str::<Features>(&json).unwrap(), features);
        let bytes = minicbor::to_vec(&features).unwrap();
        assert_eq!(minicbor::decode::<Features>(&bytes).unwrap(), features);
    }

    #[test]
    fn what_is_named_counts_as_had() {
        let mut features = Features::default();
        assert!(!features.has(Feature::HoseReels) && !features.has(Feature::HoseOverHalfInch));
        features.reels.push("rear".into());
        features.hoses.push(HoseTag::inches("H-7", 0.75));
        assert!(features.has(Feature::HoseReels) && features.has(Feature::HoseOverHalfInch));
        assert!(features.meets(&[]) && !features.meets(&[Feature::Trailer]));
        assert!(features.meets(&[Feature::Trailer, Feature::HoseReels]));
    }
}
