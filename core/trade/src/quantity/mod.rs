//! What is measured, and in what unit.

pub(crate) mod day;
mod figure;
mod tenths;

pub use figure::{Figure, FigureError, Unit};
pub use tenths::{Tenths, TenthsError};
