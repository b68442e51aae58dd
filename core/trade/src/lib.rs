#![doc = include_str!("../README.md")]

pub mod quantity;

pub use quantity::{Tenths, TenthsError};
