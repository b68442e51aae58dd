//! Passing entries on: by file, or online with the hub.
//!
//! A shop hands out an [`invite`]; a phone records at once and makes a [`hand_over`]; whoever gets a file
//! does [`take_in`]; the shop says [`accept`] to a new phone once and gives an [`answer`] back, which is
//! the phone's receipt. Everything is idempotent: a file read twice changes nothing the second time.
//!
//! Online the same parcels go one by one: the phone's [`request`], the hub's [`respond`], the phone's
//! [`take_answer`]. No network stands here.

mod accept;
mod admit_runs;
mod ahead;
mod answer;
mod coverage;
mod declined;
mod digests;
mod error;
mod follow;
mod given;
mod hand_over;
mod invite;
pub(crate) mod memory;
mod pages;
mod queue;
mod reason;
mod request;
mod respond;
mod restored;
pub mod shelf;
mod shelf_again;
mod shop_code;
mod standing;
mod take_answer;
mod take_in;
mod taken;
mod told_heads;

pub use accept::{Accepted, accept, pending};
pub use ahead::{Ahead, read_ahead};
pub use answer::answer;
pub use declined::Declined;
pub use error::ExchangeError;
pub use hand_over::{HandOver, hand_over};
pub use invite::{invite, invite_by_code};
pub use reason::Reason;
pub use request::{Request, follow_trucks, not_known, request};
pub use respond::{Answered, Door, give_trucks, respond, respond_ahead};
pub use restored::{begin_epoch, epochs};
pub use shop_code::{MOST_UNITS, ShopCode};
pub(crate) use standing::not_at_shop;
pub use standing::{Counts, EntryStanding, Whereabouts, counts, newest, standing_of};
pub use take_answer::{Came, take_answer};
pub use take_in::take_in;
pub use taken::{CodeState, EndedEarly, Fate, PendingDevice, TakenIn, Told, ToldEntry};

#[cfg(test)]
mod tests;
