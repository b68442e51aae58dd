//! When the next service is due: an hours clock and a calendar clock for each task, whichever runs out first.
//!
//! Rules R1, R2, R6 and R7. Only a service entry moves a clock; a reminder, a pour or a forecast does not.

mod doubles;
mod fine;
mod order;
mod programme;
mod service;
mod state;
mod task_clock;
mod visit;

#[cfg(test)]
mod tests;

pub use doubles::ClockNumbers;
pub use fine::FineHours;
pub use order::{DueRow, due_order};
pub use programme::{FirstService, NotAProgramme, Programme, Task, TaskId};
pub use service::{EnteredTwice, InService, LastDone, ServiceDecision, ServiceRow, UnitHours};
pub use state::{Ahead, Nearer, Standing, Standpoint, TaskState, nearer};
pub use task_clock::{LateBy, TaskClock, task_clocks, task_clocks_weighed};
pub use visit::not_bundled;
