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

impl From<tokio::task::JoinError> for HubError {
    fn from(error: tokio::task::JoinError) -> HubError {
        HubError::Thread(error.to_string())
    }
}
