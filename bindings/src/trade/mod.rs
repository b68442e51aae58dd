//! The trade's own words, as screens and commands carry them.

mod oil;
mod unit;
mod walk;
