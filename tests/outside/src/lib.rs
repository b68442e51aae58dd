//! Checks of the arithmetic and the formats against published values.

pub mod golden;
pub mod hex;
pub mod program;
pub mod second_encoder;
