//! What a command can refuse.

use std::path::PathBuf;

use sumpbook_daybook::exchange::ExchangeError;
use sumpbook_daybook::ledger::LedgerError;
use sumpbook_daybook::line::LineError;
use sumpbook_daybook::phone::PhoneError;
use sumpbook_daybook::store::StoreError;

use super::out::Said;
use crate::ShopError;
use crate::demo::DemoError;
use crate::error::plain;

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
    /// The hub said no.
    #[error(transparent)]
    Hub(#[from] crate::hub::HubError),
    /// The demo could not go on.
    #[error(transparent)]
    Demo(#[from] DemoError),
    /// A line does not read; those before it are recorded.
    #[error("line {number}: {} {}", ended(.reason), before(*.recorded))]
    Line {
        /// Its number, from 1.
        number: usize,
        /// Why.
        reason: String,
        /// How many were recorded before it.
        recorded: usize,
    },
    /// A file cannot be read.
    #[error("{} cannot be read: {}. Nothing was changed. Name the file you were given.", .path.display(), plain(.reason))]
    File {
        /// Which.
        path: PathBuf,
        /// What the system said.
        reason: std::io::Error,
    },
    /// A file cannot be written.
    #[error("{} cannot be written: {}. {kept}", .path.display(), plain(.reason))]
    Unwritten {
        /// Which.
        path: PathBuf,
        /// What the system said.
        reason: std::io::Error,
        /// What is kept all the same, and what to do next.
        kept: &'static str,
    },
    /// Something does not hold: an answer all the same, and one that scripts must not take for a yes.
    #[error("{}", .0.text)]
    Found(Box<Said>),
    /// Standard input or output failed.
    #[error("standard input or output failed: {}. What was recorded before is kept.", plain(.0))]
    Stream(#[from] std::io::Error),
    /// An answer could not be written as JSON.
    #[error("this could not be written as JSON: {0}")]
    Json(#[from] serde_json::Error),
    /// What was asked needs something that was not given.
    #[error("{0}")]
    Asked(String),
}

/// A reason as a whole sentence.
fn ended(reason: &str) -> String {
    let reason = reason.trim_end();
    if reason.ends_with(['.', '!', '?']) { reason.to_owned() } else { format!("{reason}.") }
}

/// What became of the lines before the one that does not read.
fn before(recorded: usize) -> String {
    match recorded {
        0 => "No line was recorded.".to_owned(),
        1 => "The line before it is recorded; go on from this one.".to_owned(),
        n => format!("The {n} lines before it are recorded; go on from this one."),
    }
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_that_does_not_read_says_what_is_recorded() {
        let told = |recorded| {
            CommandError::Line { number: 4, reason: "no such thing".to_owned(), recorded }.to_string()
        };
        assert_eq!(told(0), "line 4: no such thing. No line was recorded.");
        assert_eq!(told(1), "line 4: no such thing. The line before it is recorded; go on from this one.");
        assert_eq!(
            told(3),
            "line 4: no such thing. The 3 lines before it are recorded; go on from this one."
        );
    }

    #[test]
    fn a_missing_file_is_named_in_plain_words() {
        let error = CommandError::File {
            path: "yard-1.sump".into(),
            reason: std::io::Error::from(std::io::ErrorKind::NotFound),
        };
        let text = error.to_string();
        assert!(text.starts_with("yard-1.sump cannot be read: there is no such file"), "{text}");
        assert!(!text.contains("os error"), "{text}");
    }
}
