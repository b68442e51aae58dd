//! Parcels whole, cut, bent and hostile.

mod arbitrary;
mod hostile;
mod packing;
mod sealing;
