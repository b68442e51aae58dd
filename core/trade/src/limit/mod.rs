//! Limits a figure is held against, and whose rule each is.

mod holds;
mod measure;
mod rule;
mod rules;
#[cfg(test)]
mod tests;

pub use holds::{Comparator, Limit};
pub use measure::Measure;
pub use rule::{Bound, Case, LesserOf, MissingFact, Rule};
pub use rules::{RuleSet, Rules, RulesError};
