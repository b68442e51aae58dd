#![doc = include_str!("../README.md")]

pub mod calendar;
pub mod clock;
pub mod day;
pub mod defect;
pub mod ids;
pub mod notes;
pub mod hours;
pub mod quantity;
pub mod stamp;

pub use calendar::add_months;
pub use ids::{EntryId, FleetId, PersonId, SetId, TruckId, WalkId};
pub use quantity::{Figure, FigureError, Tenths, TenthsError, Unit};
pub use stamp::{Stamp, StampError};
pub use hours::{HoursLedger, JudgedReading, KeyboardAnswer, ReadingRow};
pub use quantity::{Tenths, TenthsError};
