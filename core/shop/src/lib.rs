#![doc = include_str!("../README.md")]

pub mod archive;
pub mod backup;
pub mod calendar_feed;
pub mod campaign;
pub mod cancel_visit;
pub mod certify;
pub mod close;
pub mod command;
pub mod console;
pub mod crew;
pub mod demo;
pub mod due;
mod entry_lines;
mod error;
mod heads;
pub mod hub;
pub mod lay_up;
mod new_folder;
pub mod oil_use;
pub mod paper;
pub mod papers;
pub mod parts;
mod photo_files;
pub mod plan;
pub mod proof;
mod register;
mod revoke;
pub mod sealed_key;
pub mod service;
pub mod settle;
pub mod sheet;
mod shop;
pub mod slip;
pub mod stock;
pub mod table;
pub mod table_in;
pub mod table_out;
mod unit_said;
pub mod verify;
pub mod wait;
pub mod whole_fleet;

#[cfg(test)]
mod tests;

pub use error::ShopError;
pub use register::{NewPerson, NewSet, NewTruck};
pub use revoke::{phone_by_fingerprint, revoke};
pub use shop::{Hand, InitOptions, Shop, Told};
pub use unit_said::{FeaturesSaid, UnitSaid};
