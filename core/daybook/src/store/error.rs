//! What can go wrong with the folder, told so that a person can act on it.

use std::path::PathBuf;

/// Why the store could not do what was asked. Nothing that was recorded before is lost by any of these.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// Written by a newer version of this program.
    #[error(
        "a newer version wrote this book (form {found}, this program knows up to {known}). \
         Nothing was changed. Update this program, then open it."
    )]
    NewerVersion {
        /// The form found.
        found: i64,
        /// The newest this program knows.
        known: i64,
    },
    /// The folder or its file cannot be written.
    #[error("{} cannot be written. What is recorded is kept and can be read. Allow writing there, then try again.", .0.display())]
    ReadOnly(PathBuf),
    /// No room on the disk.
    #[error("the disk is full. What was recorded is kept; this was not. Make room, then try again.")]
    Full,
    /// The file is damaged.
    #[error("part of the book in {} can't be read. The file is kept as it is. Open it again: what is readable is taken over.", .0.display())]
    Damaged(PathBuf),
    /// Another process is writing for longer than we wait.
    #[error("another program is writing in this folder. Nothing was lost. Try again when it is done.")]
    Busy,
    /// The folder cannot be reached.
    #[error("{} cannot be opened: {reason}. Nothing was changed.", .path.display())]
    Folder {
        /// Where.
        path: PathBuf,
        /// What the system said.
        reason: std::io::Error,
    },
    /// Something in the file is not as this program writes it.
    #[error("the book holds something unexpected: {0}. Nothing was changed.")]
    Unexpected(&'static str),
    /// Anything else SQLite said.
    #[error("the book could not be used: {0}. What was recorded before is kept.")]
    Sqlite(#[source] rusqlite::Error),
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> StoreError {
        use rusqlite::ErrorCode as Code;
        match error.sqlite_error_code() {
            Some(Code::DiskFull) => StoreError::Full,
            Some(Code::DatabaseBusy | Code::DatabaseLocked) => StoreError::Busy,
            Some(Code::DatabaseCorrupt | Code::NotADatabase) => StoreError::Damaged(PathBuf::new()),
            Some(Code::ReadOnly | Code::PermissionDenied | Code::CannotOpen) => {
                StoreError::ReadOnly(PathBuf::new())
            }
            _ => StoreError::Sqlite(error),
        }
    }
}

impl StoreError {
    /// The same error with the file it is about.
    pub(crate) fn at(self, path: &std::path::Path) -> StoreError {
        match self {
            StoreError::Damaged(p) if p.as_os_str().is_empty() => StoreError::Damaged(path.to_owned()),
            StoreError::ReadOnly(p) if p.as_os_str().is_empty() => StoreError::ReadOnly(path.to_owned()),
            other => other,
        }
    }
}
