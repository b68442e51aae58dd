//! Air for the job: what is left over, at what pressure, and what to look out for. It warns and never refuses.
//!
//! Free air is told as a fresh compressor breathes it at sea level in the standard atmosphere; quantities are
//! typed, so that cfm, litres and cubic metres do not meet by accident.

mod atmosphere;
mod delivered;
mod hose;
mod job;
mod orifice;
mod receiver;
mod runs;
#[cfg(test)]
mod tests;
mod tools;
mod vapour;
mod warm;

pub use atmosphere::{Intake, density_ratio, standard_pressure, standard_temperature};
pub use delivered::delivered;
pub use hose::{Fitting, HoseRun, hose_loss};
pub use job::{Blowing, Job, JobAir, JobWarning, Site, air_for};
pub use orifice::{Edge, orifice_flow};
pub use receiver::{content, lasts, size_for};
pub use runs::{RunShare, short_runs};
pub use tools::{Tool, demand};
pub use vapour::{dew_point, saturation, vapour_at};
pub use warm::{RunWarm, pressure_dew_point, run_warm};
