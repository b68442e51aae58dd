//! The demo: the invented fleet of Tern Hollow Water, lived by real phones and a real shop.

mod deed;
mod error;
mod fleet;
mod month;
mod online;
mod walk;
mod world;

pub use deed::{Deed, Doing, Recorded, moment};
pub use error::DemoError;
pub use fleet::{PEOPLE, ZONE};
pub use month::{CLOSED_DAYS, PHONES, month};
pub use online::Online;
pub use walk::Found;
pub use world::World;
