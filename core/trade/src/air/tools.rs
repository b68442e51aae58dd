//! What the tools ask for.

use uom::si::f64::{Pressure, VolumeRate};

/// A tool as its plate has it, and how it is used.
#[derive(Clone, Debug, PartialEq)]
pub struct Tool {
    /// What the yard calls it.
    pub name: String,
    /// Free air it takes at its pressure.
    pub takes: VolumeRate,
    /// The pressure it wants, gauge.
    pub at: Pressure,
    /// How many of them.
    pub count: u32,
    /// The part of the time each is pulled, 0 to 1; 1 where nobody says.
    pub share: f64,
}

/// Free air all of them take together.
pub fn demand(tools: &[Tool]) -> VolumeRate {
    tools.iter().map(|tool| tool.takes * f64::from(tool.count) * tool.share.clamp(0.0, 1.0)).sum()
}
