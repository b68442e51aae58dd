//! What is measured, and in what unit.

mod figure;
mod tenths;

pub use figure::{Figure, FigureError, Unit};
pub use tenths::{Tenths, TenthsError};
