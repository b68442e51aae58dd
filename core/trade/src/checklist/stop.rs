//! One stop of the walk, as the template has it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{EngineState, Line};
use crate::unit::Feature;

/// Where one stands. Neighbouring stops of one place may be joined.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum WalkPlace {
    /// At the open hood.
    Hood,
    /// Beside the frame, looking under.
    Under,
    /// In the cab.
    Cab,
    /// In front.
    Front,
    /// On the left.
    Left,
    /// Behind.
    Rear,
    /// At the trailer.
    Trailer,
    /// On the right.
    Right,
    /// At the body's bins.
    Body,
    /// At the compressor.
    Compressor,
    /// At the compressor's display.
    Panel,
    /// At the air outlets.
    Outlets,
    /// In the driver's seat, for the brake tests.
    Seat,
    /// In the yard, rolling.
    Yard,
}

/// One stop of the walk.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Stop {
    /// Its number in the template, 1 first.
    pub number: u8,
    /// Its key: "under-hood".
    pub id: String,
    /// Where one stands.
    pub place: WalkPlace,
    /// The state the engine is in.
    pub engine: EngineState,
    /// Chocks are in.
    #[serde(default)]
    pub chocks: bool,
    /// Only in the yard: the truck moves.
    #[serde(default)]
    pub yard_only: bool,
    /// It has a screen of its own (a glass to read, a test to time) and is never joined.
    #[serde(default)]
    pub own_screen: bool,
    /// A second driver walks it too, on the first one's record.
    #[serde(default)]
    pub second_driver: bool,
    /// Features, any one of which it needs.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub needs: Vec<Feature>,
    /// Its lines, in the order they are looked at.
    pub lines: Vec<Line>,
}
