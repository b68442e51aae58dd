//! What may come in: bytes that are bounded, entries that are signed, changes that we build ourselves.
//!
//! No automerge bytes that someone else wrote are ever read. Fields travel, and both ends build.

pub mod bounded;
pub mod change;
pub mod key;
pub mod place;
pub mod sign;
pub mod slip_code;

pub use change::{Change, ChangeError, ChangeHash};
pub use key::{Actor, DeviceKey, KeyId, PublicKey, PublicKeyError};
pub use place::{MOST_DEPS, Place, PlaceError};
pub use sign::{MOST_PAYLOAD, SignError, VerifyError, sign, verify};
pub use slip_code::{SlipCode, SlipCodeError};
