//! What an exchange can refuse, told with the cause, what is kept, and the next step.

use sumpbook_trade::TruckId;

use crate::ledger::LedgerError;
use crate::parcel::{FileError, SealError};
use crate::store::StoreError;

/// Why an exchange could not be done.
#[derive(Debug, thiserror::Error)]
pub enum ExchangeError {
    /// Not a hand-over file.
    #[error("This is not a Sumpbook file. Nothing was taken in. Choose the file you were handed.")]
    NotAFile,
    /// Another fleet's file.
    #[error("Another fleet's file: nothing taken in. Ask whoever handed it over which fleet it is for.")]
    OtherFleet,
    /// The fleet's name under another key.
    #[error(
        "This is not the shop this phone knows: its key is another. Nothing was taken in, all is kept. \
         Call the shop before you go on."
    )]
    OtherShop,
    /// Only the shop does this.
    #[error("Only the shop's own folder can do this. Nothing was changed. Do it at the shop.")]
    NotTheShop,
    /// A truck the fleet book does not have.
    #[error("Truck {0} is not in the fleet. No invitation was made. Register the truck, then invite.")]
    UnknownTruck(TruckId),
    /// A code the shop never gave out.
    #[error("The shop gave out no such code. Nothing was added. Make a new invitation for this phone.")]
    CodeUnknown,
    /// A code whose time is over.
    #[error("That code ran out on {0}. Nothing was added. Ask the shop for a new one.")]
    CodeExpired(String),
    /// A code another device used.
    #[error("That code was used already by {0}. Nothing was added. Ask the shop for a new one.")]
    CodeUsed(String),
    /// No device with this fingerprint waits.
    #[error(
        "No phone with the key {0} is waiting. Nothing was added. \
         Take in that phone's file first, then compare the key again."
    )]
    NobodyWaiting(String),
    /// The file holds no invitation.
    #[error("This file is not an invitation. Nothing was changed. Ask the shop for one.")]
    NotAnInvitation,
    /// The file's invitation is damaged.
    #[error("The invitation is damaged: {0}. Nothing was changed. Ask the shop to hand it over again.")]
    Invitation(String),
    /// What came back is not the shop's answer to what was sent.
    #[error("What came back is not the shop's answer: {0}. Nothing was taken in, all is kept. Try again.")]
    NotTheAnswer(String),
    /// The parcel could not be sealed.
    #[error("The file could not be made: {0}. Nothing was lost. Try again.")]
    Seal(#[from] SealError),
    /// The file could not be written.
    #[error("The file could not be made: {0}. Nothing was lost. Try again.")]
    File(#[from] FileError),
    /// The system gave no random bytes.
    #[error("The system has no random numbers to give ({0}). Nothing was changed. Try again.")]
    Random(#[from] getrandom::Error),
    /// What this folder remembers of exchanges does not read.
    #[error("What this folder remembers of exchanges does not read: {0}. The entries are kept.")]
    Memory(#[from] serde_json::Error),
    /// The books said no.
    #[error(transparent)]
    Ledger(#[from] LedgerError),
    /// The store said no.
    #[error(transparent)]
    Store(#[from] StoreError),
}
