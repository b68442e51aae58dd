#![doc = include_str!("../README.md")]

mod checklist;
mod clock;
mod drafts;
mod enrolment;
mod error;
mod error_from;
mod exchange;
mod fleet;
mod happened;
mod key_keeper;
mod label;
mod listener;
mod phone;
mod photo;
mod pin;
mod record;
mod screen;
mod slip;
mod sound;
mod text;
mod trade;
mod values;

pub use clock::PhoneClock;
pub use drafts::{DraftRow, DraftsKept, EndOfDaySaid, Signed, TopUpSaid};
pub use error::{
    DraftKind, EnrolmentKind, FileKind, KeyKind, OnlineKind, PhoneError, PhotoKind, SlipKind, StorageKind,
};
pub use exchange::{ExchangeReport, FileMade, FileTaken, PhotoHalt, TryWhen};
pub use fleet::{AboutPhone, FleetHere, PersonHere, Salvage, UnitHere};
pub use key_keeper::KeyKeeper;
pub use listener::{ChangeListener, ChangeSet};
pub use phone::Phone;
pub use pin::{PinChosen, PinSaid, pin_digits};
pub use record::{LevelSaid, Said, ShownNote};
pub use screen::{key_of_part, sound_part};
pub use slip::slip_digits;
pub use text::{
    TextAsk, TextValue, has_text, key_of_called, key_of_hint, key_of_item, key_of_level, key_of_lock,
    key_of_main, key_of_notice, key_of_oil_verdict, key_of_pre_trip, key_of_standing, key_of_tried,
    key_of_why_not, key_of_word, keys_of_cautions, text, texts,
};
pub use values::{Band, OfferedWord};

uniffi::setup_scaffolding!("sumpbook");
