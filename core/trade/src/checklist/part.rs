//! The eleven parts a driver's report must cover.

use minicbor::{CborLen, Decode, Encode};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A part of 49 CFR 396.11(a)(1), (i) to (xi).
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
pub enum Part {
    /// Service brakes including trailer brake connections.
    #[n(1)]
    #[serde(rename = "i")]
    ServiceBrakes,
    /// Parking brake.
    #[n(2)]
    #[serde(rename = "ii")]
    ParkingBrake,
    /// Steering mechanism.
    #[n(3)]
    #[serde(rename = "iii")]
    Steering,
    /// Lighting devices and reflectors.
    #[n(4)]
    #[serde(rename = "iv")]
    Lighting,
    /// Tires.
    #[n(5)]
    #[serde(rename = "v")]
    Tires,
    /// Horn.
    #[n(6)]
    #[serde(rename = "vi")]
    Horn,
    /// Windshield wipers.
    #[n(7)]
    #[serde(rename = "vii")]
    Wipers,
    /// Rear vision mirrors.
    #[n(8)]
    #[serde(rename = "viii")]
    Mirrors,
    /// Coupling devices.
    #[n(9)]
    #[serde(rename = "ix")]
    Coupling,
    /// Wheels and rims.
    #[n(10)]
    #[serde(rename = "x")]
    Wheels,
    /// Emergency equipment.
    #[n(11)]
    #[serde(rename = "xi")]
    Emergency,
}

impl Part {
    /// All eleven, in the rule's order.
    pub const ALL: [Part; 11] = [
        Part::ServiceBrakes,
        Part::ParkingBrake,
        Part::Steering,
        Part::Lighting,
        Part::Tires,
        Part::Horn,
        Part::Wipers,
        Part::Mirrors,
        Part::Coupling,
        Part::Wheels,
        Part::Emergency,
    ];
}
