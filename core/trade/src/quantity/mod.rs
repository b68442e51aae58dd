//! What is measured, and in what unit.

pub(crate) mod day;
mod figure;
mod grouped;
mod tenths;

pub use figure::{Figure, FigureError, Unit};
pub use grouped::ungrouped;
pub use tenths::{Tenths, TenthsError};
