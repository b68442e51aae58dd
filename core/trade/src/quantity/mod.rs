//! What is measured, and in what unit.

mod tenths;

pub use tenths::{Tenths, TenthsError};
