//! What a phone's daybook can refuse.

use std::path::PathBuf;

use super::KeySealError;
use crate::exchange::ExchangeError;
use crate::ledger::LedgerError;
use crate::photo::PhotoError;
use crate::sound::SoundError;
use crate::store::StoreError;

/// Why the daybook could not do it; what was recorded before is kept.
#[derive(Debug, thiserror::Error)]
pub enum PhoneError {
    /// The folder is enrolled.
    #[error(
        "{} is enrolled already, with {fleet} as {device}. Nothing was changed. \
         Use it as it is, or choose another folder.", .folder.display()
    )]
    AlreadyEnrolled {
        /// The folder.
        folder: PathBuf,
        /// The fleet's name.
        fleet: String,
        /// The device's name.
        device: String,
    },
    /// The folder holds another fleet's book.
    #[error("{} holds a book of another fleet. Nothing was changed. Choose another folder.", .0.display())]
    OtherBook(PathBuf),
    /// The folder is not enrolled.
    #[error("{} is not enrolled with a shop. Ask the shop for an invitation, then enrol.", .0.display())]
    NotEnrolled(PathBuf),
    /// The key that belongs to the folder is gone.
    #[error(
        "This phone's key is gone. What is recorded is kept and can be read; nothing new can be signed. \
         Ask the shop for a new invitation."
    )]
    KeyGone,
    /// A newer version wrote the home file.
    #[error("A newer version set up this folder. Nothing was changed. Update this program, then open it.")]
    NewerHome,
    /// The home file cannot be read or written.
    #[error("{} can't be used: {reason}. What is recorded is kept.", .path.display())]
    Home {
        /// The file.
        path: PathBuf,
        /// Why.
        reason: String,
    },
    /// A device needs a name.
    #[error("A phone needs a name of 1 to 64 characters. Nothing was changed. Give it one.")]
    Name,
    /// The key could not be kept or given back.
    #[error(transparent)]
    Seal(#[from] KeySealError),
    /// The exchange said no.
    #[error(transparent)]
    Exchange(#[from] ExchangeError),
    /// The books said no.
    #[error(transparent)]
    Ledger(#[from] LedgerError),
    /// The store said no.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// A photo could not be kept or read.
    #[error(transparent)]
    Photo(#[from] PhotoError),
    /// A sound could not be kept or read.
    #[error(transparent)]
    Sound(#[from] SoundError),
    /// The system gave no random bytes.
    #[error("The system has no random numbers to give ({0}). Nothing was changed. Try again.")]
    Random(#[from] getrandom::Error),
}
