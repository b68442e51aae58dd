//! When the hours of a task will run out, and how sure that is.
//!
//! A forecast moves no clock and changes no state (R2): it sorts the due list, draws the ruler's line and, with
//! a part that takes weeks to come, says when to order. Everything here hangs on the last accepted reading and
//! not on the moment of asking, so the answer stays the same until somebody reads the meter again.

mod pace;
mod runs_out;
mod sequence;
#[cfg(test)]
mod tests;
mod week;

pub use pace::{ForecastNumbers, HoursAt, Pace, PaceUnknown, pace};
pub use runs_out::RunsOut;
pub use sequence::{FeedAnswer, next_sequence};
pub use week::Week;
