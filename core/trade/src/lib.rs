#![doc = include_str!("../README.md")]

pub mod hours;
pub mod quantity;

pub use hours::{HoursLedger, JudgedReading, KeyboardAnswer, ReadingRow};
pub use quantity::{Tenths, TenthsError};
