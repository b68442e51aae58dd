#![doc = include_str!("../README.md")]

pub mod checklist;
pub mod limit;
pub mod quantity;
pub mod unit;

pub use checklist::{Answer, Item, Line, Part, PlannedStop, Severity, Template, plan};
pub use limit::{Limit, Measure, Rules};
pub use quantity::{Tenths, TenthsError};
pub use unit::{Feature, Features, HoseTag};
