#![doc = include_str!("../README.md")]

pub mod ids;
pub mod quantity;
pub mod stamp;

pub use ids::{EntryId, FleetId, PersonId, SetId, TruckId, WalkId};
pub use quantity::{Figure, FigureError, Tenths, TenthsError, Unit};
pub use stamp::{Stamp, StampError};
