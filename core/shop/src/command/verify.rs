//! `verify`: everything worked out again.

use std::path::Path;

use super::CommandError;
use super::args::Reading;
use super::out::Said;
use crate::table::table;
use crate::{Shop, verify as verifying};

/// Verifies the shop's books.
///
/// # Errors
/// When something does not hold, which is told row by row; and as any read.
pub(super) fn verify(folder: &Path, args: &Reading) -> Result<Said, CommandError> {
    let mut shop = Shop::open(folder)?;
    let report = match args.as_of {
        None => verifying::verify(&mut shop)?,
        Some(at) => {
            let ledger = crate::close::as_of(&shop, at)?;
            verifying::verify_ledger(&ledger)?
        }
    };
    let mut text = format!(
        "{} entries in {} books: hashes built again, signatures checked, documents put together.\n{} closings answered again.\n",
        report.entries, report.books, report.closings
    );
    if report.findings.is_empty() {
        text.push_str("All of it holds.");
        return Said::new(text, &report);
    }
    let rows = report.findings.iter().map(|finding| [finding.at.clone(), finding.what.clone()]);
    text.push_str(&format!(
        "{} things do not hold:\n{}",
        report.findings.len(),
        table(["Where", "What"], rows)
    ));
    Err(CommandError::Asked(text))
}
