//! What a hub can refuse.

use std::io;
use std::path::PathBuf;

use crate::ShopError;
use crate::error::plain;

/// Why the hub could not do something. What was recorded before is kept.
#[derive(Debug, thiserror::Error)]
pub enum HubError {
    /// The shop said no.
    #[error(transparent)]
    Shop(#[from] ShopError),
    /// More wait to write than the hub holds.
    #[error("too many write at once. Nothing of this was recorded. Try again in a second.")]
    Busy,
    /// The hub ends.
    #[error("the hub is stopping. Nothing of this was recorded. Start it again, then try again.")]
    Stopping,
    /// What was to be written is not on the disk.
    #[error("{}", unwritten(*.full))]
    Unwritten {
        /// Because the disk is full.
        full: bool,
    },
    /// The system gave no random bytes.
    #[error("the system has no random numbers to give ({0}). Nothing was changed. Try again.")]
    Random(#[from] getrandom::Error),
    /// A thread cannot be begun, or ended before its time.
    #[error("the hub cannot go on: {0}. What was acknowledged is kept. Start it again.")]
    Thread(String),
    /// The address cannot be listened on.
    #[error("{address} cannot be listened on: {}. Nothing was changed. Choose another with --address.", plain(.reason))]
    Address {
        /// As asked.
        address: String,
        /// What the system said.
        reason: io::Error,
    },
    /// The hub's own certificate cannot be made or read.
    #[error("the hub's certificate in {} cannot be used: {reason}. Nothing was changed. Move the file aside; a new one is made and no phone enrols again.", .path.display())]
    Certificate {
        /// The file.
        path: PathBuf,
        /// What is wrong with it.
        reason: String,
    },
}

/// Also what a phone is told.
pub(super) fn unwritten(full: bool) -> &'static str {
    match full {
        true => {
            "The shop computer's disk is full. Nothing is half-written; phones keep their entries and try again. Make room on it."
        }
        false => {
            "The shop could not write. Nothing of this was recorded; all is kept on the phone. Try again."
        }
    }
}

impl From<tokio::task::JoinError> for HubError {
    fn from(error: tokio::task::JoinError) -> HubError {
        HubError::Thread(error.to_string())
    }
}
