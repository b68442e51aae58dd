//! What a ledger can refuse.

use sumpbook_trade::checklist::TemplateError;

use crate::gate::{ChangeError, SignError};
use crate::store::StoreError;

/// Why something could not be done. What was recorded before is kept.
#[derive(Debug, thiserror::Error)]
pub enum LedgerError {
    /// The store said no.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// The entry cannot be signed: too long, or of a form that nobody would admit.
    #[error("this entry cannot be signed: {0}. Nothing was recorded. Shorten it and record it again.")]
    Sign(#[from] SignError),
    /// The change cannot be built.
    #[error("this book is at its end: {0}. Nothing was recorded.")]
    Change(#[from] ChangeError),
    /// The system gave no random bytes.
    #[error("the system has no random numbers to give ({0}). Nothing was recorded. Try again.")]
    Random(#[from] getrandom::Error),
    /// Something kept beside the entries could not be read or written.
    #[error(
        "what is kept beside the entries does not read: {0}. The entries are kept; rebuild the projections."
    )]
    State(#[from] serde_json::Error),
    /// The checklist in this program does not hang together.
    #[error("{0}. What is recorded is kept. Install the program again.")]
    Checklist(#[from] TemplateError),
    /// The folded state could not be written.
    #[error("the folded state cannot be kept: {0}. The entries are kept.")]
    Folded(String),
}

impl From<rusqlite::Error> for LedgerError {
    fn from(error: rusqlite::Error) -> LedgerError {
        LedgerError::Store(error.into())
    }
}
