//! Checks of the arithmetic and the formats against published values.
