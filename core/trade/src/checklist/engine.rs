//! The state the engine is in while a stop is walked.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The state the engine is in while a stop is walked. A stop has one, so nobody runs back to the cab.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum EngineState {
    /// Off, key in the pocket.
    KeyOut,
    /// Off, somebody may sit in the cab.
    KeyOff,
    /// Off, key on, so that displays wake.
    KeyOn,
    /// Off or idling, every lamp on.
    LightsOn,
    /// Idling.
    Running,
    /// Compressor cold and stopped, pressure gone.
    ColdStopped,
    /// Off while pressure is fanned down, then fast idle while it builds up again.
    OffThenFastIdle,
}
