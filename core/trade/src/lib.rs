#![doc = include_str!("../README.md")]

pub mod calendar;
pub mod clock;
pub mod day;
pub mod defect;
pub mod notes;
pub mod quantity;

pub use calendar::add_months;
pub use quantity::{Tenths, TenthsError};
