//! `verify`: everything worked out again.

use std::path::Path;

use sumpbook_trade::Stamp;

use super::CommandError;
use super::found::open;
use super::out::{Said, counted};
use crate::table::table;
use crate::verify as verifying;

/// Verifies the shop's books.
///
/// # Errors
/// When something does not hold, which is told row by row; and as any read.
pub(super) fn verify(folder: &Path, as_of: Option<Stamp>) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let report = match as_of {
        None => verifying::verify(&mut shop)?,
        Some(at) => {
            let ledger = crate::close::as_of(&shop, at)?;
            verifying::verify_ledger(&ledger)?
        }
    };
    let mut text = format!(
        "{} in {}: hashes built again, signatures checked, documents put together.\n{} answered again.\n",
        counted(report.entries, "entry", "entries"),
        counted(report.books, "book", "books"),
        counted(report.closings, "closing", "closings"),
    );
    if report.findings.is_empty() {
        text.push_str("All of it holds.");
        return Said::new(text, &report);
    }
    let rows = report.findings.iter().map(|finding| [finding.at.clone(), finding.what.clone()]);
    text.push_str(&format!(
        "{} not hold:\n{}\nNothing was changed. Keep a copy of the folder before you do anything else.",
        counted(report.findings.len(), "thing does", "things do"),
        table(["Where", "What"], rows)
    ));
    Err(CommandError::Found(Box::new(Said::new(text, &report)?)))
}
