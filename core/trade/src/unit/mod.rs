//! What a unit has.

mod features;
mod hose;

pub use features::{Feature, Features};
pub use hose::HoseTag;
