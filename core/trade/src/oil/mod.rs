//! Where the compressor's oil goes (R11): fills, balances, what is usual, what leaves with the air.
//!
//! "R11 oil" is the shop's rule: used = carried + poured - what stands over the middle of the glass after the
//! pour. A pour with a level after it closes a balance and carries the rest, plus or minus, to the next. What
//! filter, lines and cooler take up after a fill is kept apart as settling. A small balance says nothing: its
//! band, from the two readings of the glass, is shown with it, and no verdict is given while the band is wider
//! than the question.
//!
//! Volumes are at 15 degC and in millilitres; `Millilitres` and `MlPerHour` are the two quantities used here.

mod amount;
mod astray;
mod balance;
mod carry_over;
mod filed;
mod fill;
mod level;
#[cfg(test)]
mod tests;
mod usual;
mod verdict;

pub use amount::{Millilitres, MlPerHour};
pub use astray::{Astray, astray, rose};
pub use balance::{Balance, Moment, SoFar};
pub use carry_over::{CarryOver, OilClass, carry_over, load_share, use_at};
pub use filed::{Filed, SampleDrawn, file_answer};
pub use fill::{Fill, OilEvent, OilThing, fills};
pub use level::{InGlass, LEAST_MINUTES, Level, NoVolume, OilNumbers, OilSystem, Surplus, surplus};
pub use usual::{Against, Change, Direction, UsePoint, Usual, against_usual};
pub use verdict::{NoVerdict, OilVerdict, verdict};
