//! What a command can refuse.

use std::path::PathBuf;

use sumpbook_daybook::exchange::ExchangeError;
use sumpbook_daybook::ledger::LedgerError;
use sumpbook_daybook::line::LineError;
use sumpbook_daybook::phone::PhoneError;
use sumpbook_daybook::store::StoreError;

use crate::ShopError;
use crate::demo::DemoError;

/// Why a command did not do what was asked.
#[derive(Debug, thiserror::Error)]
pub enum CommandError {
    /// The shop said no.
    #[error(transparent)]
    Shop(#[from] ShopError),
    /// The phone said no.
    #[error(transparent)]
    Phone(#[from] PhoneError),
    /// A file could not be exchanged.
    #[error(transparent)]
    Exchange(#[from] ExchangeError),
    /// The demo could not go on.
    #[error(transparent)]
    Demo(#[from] DemoError),
    /// A line does not read; those before it are recorded.
    #[error("line {number}: {reason} {recorded} before it are recorded.")]
    Line {
        /// Its number, from 1.
        number: usize,
        /// Why.
        reason: String,
        /// How many were recorded before it.
        recorded: usize,
    },
    /// A file cannot be read or written.
    #[error("{}: {reason}. Nothing was changed.", .path.display())]
    File {
        /// Which.
        path: PathBuf,
        /// What the system said.
        reason: std::io::Error,
    },
    /// Standard input or output failed.
    #[error("{0}")]
    Stream(#[from] std::io::Error),
    /// An answer could not be written as JSON.
    #[error("this could not be written as JSON: {0}")]
    Json(#[from] serde_json::Error),
    /// What was asked needs something that was not given.
    #[error("{0}")]
    Asked(String),
}

impl From<LedgerError> for CommandError {
    fn from(error: LedgerError) -> CommandError {
        CommandError::Shop(error.into())
    }
}

impl From<StoreError> for CommandError {
    fn from(error: StoreError) -> CommandError {
        CommandError::Shop(error.into())
    }
}

impl From<LineError> for CommandError {
    fn from(error: LineError) -> CommandError {
        CommandError::Asked(error.to_string())
    }
}
