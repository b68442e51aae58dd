#![doc = include_str!("../README.md")]

pub mod book;
pub mod draft;
pub mod exchange;
pub mod fleet;
pub mod gate;
pub mod judgement;
pub mod label;
pub mod ledger;
pub mod line;
pub mod parcel;
pub mod phone;
pub mod photo;
pub mod screen;
pub mod sound;
pub mod state;
pub mod store;
pub mod text;

/// The version of this program, as a phone tells it to the hub.
pub const PROGRAM: &str = env!("CARGO_PKG_VERSION");

pub use book::{BookId, EntryRow};
pub use draft::{Draft, DraftError, EndOfDayDraft, PreTripDraft, TopUpDraft};
pub use exchange::{ExchangeError, HandOver, TakenIn};
pub use fleet::{Device, Fleet};
pub use gate::{Actor, ChangeHash, DeviceKey, KeyId, Place, PublicKey};
pub use judgement::Judged;
pub use ledger::{Admission, Incoming, Ledger, LedgerError, NewEntry, Refusal, Root};
pub use line::{Line, LineError};
pub use phone::{Daybook, FileSeal, KeySeal, Parts, PhoneError};
pub use screen::Standing;
pub use state::UnitState;
pub use store::{Salvaged, Store, StoreError};
pub use text::{Language, Texts};
