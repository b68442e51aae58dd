//! What is done in an order that matters: arrival, top-up, start, using air, shut-down, leaving.

mod gate;
mod step;
mod table;
#[cfg(test)]
mod tests;

pub use gate::{CapSigns, may_open_cap};
pub use step::{
    OnNotSo, PlannedStep, Step, StepStop, is_step_item, is_step_word, item_of_step, word_of_step,
};
pub use table::{Procedure, ProcedureError, Procedures};
