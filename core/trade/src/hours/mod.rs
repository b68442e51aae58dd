//! Hour readings of one meter: which of them count, and what is still to ask (R3).
//!
//! "R3 hour readings" is the shop's rule for figures people read off a meter. In short: a meter runs
//! forward and no faster than the clock. A figure that breaks this is shown, kept out of the count and
//! asked about; a mistyped figure that was taken is outvoted by the readings after it, or goes to a person.
//!
//! Everything here is a function of its arguments: the same rows in any order give the same
//! [`HoursLedger`] on every phone and on the hub. One call judges one meter of one unit.
//!
//! Words used below: a *figure* is what the meter shows; a *total* is the figure carried over all
//! exchanges of meters, so totals of two meters compare; a reading *can follow* another when the total
//! rises by nothing or by at most the real hours between the two, rounded up to the tenth.

mod counted;
mod due;
mod estimate;
mod hint;
mod keyboard;
mod ledger;
mod moment;
mod numbers;
mod pass;
mod question;
mod rows;
mod run;
mod settle;
mod span;
mod splice;
mod unlike;

pub use counted::{Counted, CountedRun, Mark, MarkKind, RunEnds, counted};
pub use due::DueHours;
pub use estimate::{Estimate, with_estimates};
pub use hint::Hint;
pub use keyboard::KeyboardAnswer;
pub use ledger::HoursLedger;
pub use numbers::{HoursNumbers, TURNS};
pub use question::{NeverAlone, Question, QuestionWhy};
pub use rows::{AsideWhy, ExchangeRow, JudgedReading, Part, ReadingRow, Settlement, Verdict};
pub use splice::Splice;

#[cfg(test)]
mod tests;
