//! What a site does to the oil: hours that count for more, and oil whose look calls the service now (R10).
//!
//! "R10 wear" is the shop's rule for dust: an hour counts by the weight in force on its day, one unless the shop
//! sets another. Weights hold from the day they are set and never backwards. A rise between two readings that
//! crosses days of different condition takes the heaviest of them, unless a reading in between splits it.

mod called;
mod due_reading;
mod spell;
#[cfg(test)]
mod tests;
mod weights;
mod worn;

pub use called::{Called, OilChange, OilSeen, WhyCalled, called_now};
pub use due_reading::{DueReading, due_reading};
pub use spell::{Said, Spell, spells};
pub use weights::{WeightSet, Weights};
pub use worn::Worn;
