//! What a truck holds, what a top-up tells, and which oils may meet.

mod between;
mod kind;
mod mix;
mod record;
mod sealed;
mod table;
#[cfg(test)]
mod tests;
mod thirst;

pub use between::{is_engine_oil_task, passes_a_quart};
pub use kind::{Fluid, FluidAct};
pub use mix::{Mix, Oil, OilFamily};
pub use record::{Finding, FluidFacts};
pub use sealed::TopUpFinding;
pub use table::{FamilyFacts, FluidError, Fluids};
pub use thirst::{Filled, sudden_thirst};
