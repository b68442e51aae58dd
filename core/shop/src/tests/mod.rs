//! The shop against the invented month of Tern Hollow Water: invented data, outcomes worked by rule.

mod archives;
mod campaigns;
mod closing;
mod closing_by_itself;
mod console;
mod dated_ahead;
mod decisions;
mod demo_month;
mod folder;
mod lay_ups;
mod locks_by_itself;
mod month;
mod numbers;
mod set_moves;
mod severities;
mod sheet_phones;
mod steps;
mod tables;
mod wrong_oil;
pub(crate) mod yard;
