//! A yard's day: which day a moment belongs to, what a pre-trip covers, and what a unit's day looked like (R9).

mod coverage;
mod state;
mod yard;

#[cfg(test)]
mod tests;

pub use coverage::{Coverage, DEFAULT_LIMIT, EndOfDay, PreTrip, coverages};
pub use state::{DayRecords, DayState, DayStatus, Heading, Roster, Use, UseKind, day_state};
pub use yard::{yard_day, yard_moment};
