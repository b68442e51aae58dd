//! What a phone holds.

pub mod book;
pub mod gate;
pub mod parcel;
