//! A phone's daybook: one folder, one key, one shop.

mod daybook;
mod error;
mod home;
pub mod online;
mod photos;
mod pin;
mod seal;
mod slip;
mod standing;

pub use daybook::{Daybook, Parts};
pub use error::PhoneError;
pub use home::Home;
pub use pin::{ASKED_DIGITS, PinError, PinSaid};
pub use seal::{FileSeal, KeySeal, KeySealError};
pub use slip::SlipError;
