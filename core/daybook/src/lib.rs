#![doc = include_str!("../README.md")]

pub mod book;
pub mod draft;
pub mod exchange;
pub mod fleet;
pub mod gate;
pub mod judgement;
pub mod ledger;
pub mod line;
pub mod parcel;
pub mod phone;
pub mod screen;
pub mod state;
pub mod store;
pub mod text;
