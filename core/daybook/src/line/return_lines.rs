//! Lines of the list before a return to service, as they are recorded: by name, and what is waived for a reason.

use sumpbook_trade::lay_up::{ReturnItem, ReturnList, ReturnListError};
use sumpbook_trade::record::{ReturnHow, ReturnLine};
use sumpbook_trade::{Entry, Fact};

/// Why a line does not hold.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ReturnLineError {
    /// The list itself does not read.
    #[error(transparent)]
    List(#[from] ReturnListError),
    /// The list has no such line.
    #[error("the list before a return to service has no line '{line}'. Its lines are: {known}.")]
    UnknownLine {
        /// As it was written.
        line: String,
        /// The lines there are.
        known: String,
    },
    /// A line was given twice.
    #[error("'{0}' is answered twice. Give each line once, done or waived.")]
    Twice(String),
    /// Waived, and nobody says why.
    #[error("'{0}' is waived without a reason. Say why it is left out.")]
    NoReason(String),
    /// Nobody is named.
    #[error("a line of this list is done or waived by name. Say who.")]
    NoPerson,
}

/// Refuses lines that would answer nothing.
///
/// # Errors
/// A line that the list does not have, or one given twice; one waived without a reason.
pub fn check_return(lines: &[ReturnLine]) -> Result<(), ReturnLineError> {
    let list = ReturnList::common_practice()?;
    for (place, said) in lines.iter().enumerate() {
        if list.line(&said.line).is_none() {
            let known: Vec<&str> = list.lines.iter().map(|item: &ReturnItem| item.id.as_str()).collect();
            return Err(ReturnLineError::UnknownLine { line: said.line.clone(), known: known.join(", ") });
        }
        if lines.iter().take(place).any(|before| before.line == said.line) {
            return Err(ReturnLineError::Twice(said.line.clone()));
        }
        let reason = said.reason.as_deref().map(str::trim).unwrap_or_default();
        if said.how == ReturnHow::Waived && reason.is_empty() {
            return Err(ReturnLineError::NoReason(said.line.clone()));
        }
    }
    Ok(())
}

/// The same of an entry, which has to name who answers. A fact of another kind holds.
pub(super) fn check(entry: &Entry) -> Result<(), ReturnLineError> {
    let Fact::ReturnToService(said) = &entry.fact else { return Ok(()) };
    if !said.lines.is_empty() && entry.person.is_none() {
        return Err(ReturnLineError::NoPerson);
    }
    check_return(&said.lines)
}
