//! The walk round a unit: what is looked at, in which order, and what a finding locks.

mod again;
mod answer;
mod engine;
mod item;
mod line;
mod number;
mod own;
mod part;
mod plan;
mod severity;
mod stop;
mod template;
#[cfg(test)]
mod tests;

pub use again::{Bears, second_times, second_until};
pub use answer::{Answer, worst};
pub use engine::EngineState;
pub use item::{Again, Defect, Item, Repeat};
pub use line::{Line, LineError, Side};
pub use number::{HowGiven, NumberAsk};
pub use own::NotOnTheChecklist;
pub use part::Part;
pub use plan::{MOST_LINES, PlannedStop, plan, plan_second_driver};
pub use severity::Severity;
pub use stop::{Stop, WalkPlace};
pub use template::{Citation, Template, TemplateError};
