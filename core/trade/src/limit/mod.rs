//! Limits a figure is held against, and whose rule each is.

mod holds;
mod leak;
mod measure;
mod rule;
mod rules;
#[cfg(test)]
mod tests;
mod verdict;

pub use holds::{Comparator, Limit};
pub use leak::{LeakRun, LeakSays, LeakTold};
pub use measure::Measure;
pub use rule::{Bound, Case, LesserOf, MissingFact, Rule};
pub use rules::{RuleSet, Rules, RulesError};
pub use verdict::RuleVerdict;
