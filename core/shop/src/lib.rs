#![doc = include_str!("../README.md")]

pub mod certify;
pub mod close;
pub mod command;
pub mod console;
pub mod demo;
pub mod due;
mod error;
mod heads;
pub mod hub;
pub mod paper;
pub mod plan;
mod register;
mod revoke;
pub mod service;
pub mod settle;
pub mod sheet;
mod shop;
pub mod slip;
pub mod table;
pub mod verify;

#[cfg(test)]
mod tests;

pub use error::ShopError;
pub use register::{NewPerson, NewSet, NewTruck};
pub use revoke::{phone_by_fingerprint, revoke};
pub use shop::{Hand, InitOptions, Shop, Told};
