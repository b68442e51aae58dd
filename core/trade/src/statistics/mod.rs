//! The statistics behind pace and oil use, each with a published worked example in `tests/outside`.
//!
//! Plain numbers go in and come out: the unit is the caller's. Figures that are no numbers are the caller's
//! to leave out; a question that has no answer is `None`, never a zero.

mod cusum;
mod ewma;
mod grubbs;
mod individuals;
mod line;
mod percentile;
mod theil_sen;

pub use cusum::{Cusum, CusumStep, cusum};
pub use ewma::{Ewma, EwmaLimits, ewma};
pub use grubbs::{Outlier, farthest};
pub use individuals::{Individuals, individuals};
pub use line::Line;
pub use percentile::percentile;
pub use theil_sen::TheilSen;
