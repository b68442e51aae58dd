//! Reaching the hub over a network, whenever there is one.

mod authority;
mod back_off;
mod hub;
mod once;
mod photos;
mod sentence;
mod why;

pub use authority::{authority, host_name};
pub use back_off::{BackOff, TriedWhy, is_urgent};
pub use hub::{CHALLENGE, COMPLETE, Hub, HubSaid, LENGTH, OFFSET, PhotoSaid, Unreached};
pub use once::{Exchanged, OnlineError, PATIENCE, Wish};
pub use photos::{PhotoStop, PhotosSent};
pub use sentence::Sentence;
pub use why::{WHY, Why};
