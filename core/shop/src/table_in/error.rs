//! Why a file cannot be read as a table at all, or not be brought in.

use super::{Ask, MOST_BYTES};

/// Why a file cannot be read as a table at all, or not be brought in.
#[derive(Debug, thiserror::Error)]
pub enum TableError {
    /// Too large.
    #[error("this file is larger than {} MiB. Nothing was brought in. Part it and bring in one part after the other.", MOST_BYTES / 1024 / 1024)]
    TooLarge,
    /// Not text.
    #[error("this file is not text in UTF-8. Nothing was brought in. Save it again as CSV in UTF-8.")]
    NotText,
    /// Nothing in it.
    #[error("this file holds no rows. Nothing was brought in. Its first row holds the heads of its columns.")]
    Empty,
    /// Not a table.
    #[error(
        "this file does not read as a table: {0}. Nothing was brought in. Save it again as CSV in UTF-8."
    )]
    NotATable(String),
    /// A column is missing.
    #[error(
        "this file has no column '{missing}', which {what} need. Nothing was brought in. Columns that are known: {known}."
    )]
    Column {
        /// What it was said to hold.
        what: &'static str,
        /// The column.
        missing: &'static str,
        /// The columns it may have.
        known: String,
    },
    /// It must be said how it is written.
    #[error("{0}")]
    Ask(Box<Ask>),
    /// Another file, or other words about it, than the dry run saw.
    #[error(
        "this is not what the dry run saw: the file, or what was said about it, is another, or something came in since. Nothing was brought in. Look at the dry run again."
    )]
    NotSeen,
}
