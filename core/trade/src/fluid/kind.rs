//! The fluids by their keys and numbers.

use minicbor::{CborLen, Decode, Encode};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A fluid that is poured or drained. Numbers are the wire's: new ones are appended.
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
pub enum Fluid {
    /// The compressor's oil.
    #[n(0)]
    CompressorOil,
    /// The engine's oil.
    #[n(1)]
    EngineOil,
    /// The engine's coolant.
    #[n(2)]
    Coolant,
    /// Oil of boom, crane or outriggers.
    #[n(3)]
    HydraulicOil,
    /// The power steering's fluid.
    #[n(4)]
    PowerSteering,
    /// Fluid of hydraulic brakes.
    #[n(5)]
    BrakeFluid,
    /// Oil of clutch, gearbox or PTO case.
    #[n(6)]
    GearboxOil,
    /// Oil of the compressor's gear case, grease of its belt tensioner.
    #[n(7)]
    GearCase,
    /// Diesel exhaust fluid.
    #[n(8)]
    Def,
    /// Fuel.
    #[n(9)]
    Fuel,
    /// Water drained from the fuel's trap.
    #[n(10)]
    WaterTrap,
    /// Washer fluid.
    #[n(11)]
    WasherFluid,
    /// Water and oil drained from the brake air tanks.
    #[n(12)]
    BrakeTanks,
    /// Water drained from the receiver.
    #[n(13)]
    ReceiverWater,
    /// Water for the battery.
    #[n(14)]
    BatteryWater,
    /// Oil of an outlet's oiler.
    #[n(15)]
    ToolOil,
    /// Grease at its points.
    #[n(16)]
    Grease,
}

impl Fluid {
    /// All of them, in the order of their numbers.
    pub const ALL: [Fluid; 17] = [
        Fluid::CompressorOil,
        Fluid::EngineOil,
        Fluid::Coolant,
        Fluid::HydraulicOil,
        Fluid::PowerSteering,
        Fluid::BrakeFluid,
        Fluid::GearboxOil,
        Fluid::GearCase,
        Fluid::Def,
        Fluid::Fuel,
        Fluid::WaterTrap,
        Fluid::WasherFluid,
        Fluid::BrakeTanks,
        Fluid::ReceiverWater,
        Fluid::BatteryWater,
        Fluid::ToolOil,
        Fluid::Grease,
    ];
}

/// What is recorded of a fluid.
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
pub enum FluidAct {
    /// It was filled up.
    #[n(0)]
    TopUp,
    /// It was let out.
    #[n(1)]
    Drain,
}
