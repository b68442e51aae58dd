#![doc = include_str!("../README.md")]

pub mod book;
pub mod exchange;
pub mod fleet;
pub mod gate;
pub mod judgement;
pub mod ledger;
pub mod parcel;
pub mod phone;
pub mod state;
pub mod store;
