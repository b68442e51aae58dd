//! Who keeps the device's secret key: the platform's keystore, behind the shell.

use std::path::Path;
use std::sync::Arc;

use sumpbook_daybook::phone::{FileSeal, KeySeal, KeySealError};

use crate::error::PhoneError;

/// The platform's keystore. Called on whatever thread opens or sets up the phone.
#[uniffi::export(foreign)]
pub trait KeyKeeper: Send + Sync {
    /// Keeps the 32 secret bytes, durably, before it returns.
    ///
    /// # Errors
    /// When they could not be kept; then no earlier secret is lost.
    fn keep(&self, secret: Vec<u8>) -> Result<(), PhoneError>;

    /// Gives them back; none when none were ever kept.
    ///
    /// # Errors
    /// When there are some that cannot be read.
    fn give_back(&self) -> Result<Option<Vec<u8>>, PhoneError>;
}

/// The shell's keeper; without one, a file beside the book that only its owner can read.
#[derive(Clone)]
pub(crate) struct Keeper {
    pub(crate) shells: Option<Arc<dyn KeyKeeper>>,
    file: FileSeal,
}

impl Keeper {
    pub(crate) fn of(folder: &Path, shells: Option<Arc<dyn KeyKeeper>>) -> Keeper {
        Keeper { shells, file: FileSeal::beside(folder) }
    }
}

fn said(error: &PhoneError) -> KeySealError {
    KeySealError::Keystore(match error {
        PhoneError::Key { reason, .. } | PhoneError::Unexpected { reason } => reason.clone(),
        other => other.to_string(),
    })
}

impl KeySeal for Keeper {
    fn seal(&self, secret: &[u8; 32]) -> Result<(), KeySealError> {
        match &self.shells {
            Some(keeper) => keeper.keep(secret.to_vec()).map_err(|error| said(&error)),
            None => self.file.seal(secret),
        }
    }

    fn open(&self) -> Result<Option<[u8; 32]>, KeySealError> {
        let Some(keeper) = &self.shells else { return self.file.open() };
        let Some(secret) = keeper.give_back().map_err(|error| said(&error))? else { return Ok(None) };
        let length = secret.len();
        let not_a_key = |_| KeySealError::Keystore(format!("it gave back {length} bytes instead of 32"));
        secret.try_into().map(Some).map_err(not_a_key)
    }
}
