//! What the last one left (P4).

use sumpbook_daybook::screen::{self, DefectRow, LastReportQuery, LastReportScreen, Main, News, ReportRow};
use sumpbook_trade::{EntryId, Stamp, TruckId};

use crate::checklist::template;
use crate::error::PhoneError;
use crate::phone::Phone;

/// What the last one left.
#[uniffi::remote(Record)]
pub struct LastReportScreen {
    /// The unit's door number.
    pub door: String,
    /// How old the shop's news is.
    pub news: News,
    /// The last report; none: no report is on this phone.
    pub report: Option<ReportRow>,
    /// Every defect that is not over, earliest first.
    pub defects: Vec<DefectRow>,
    /// Certificates that the review names.
    pub to_review: Vec<EntryId>,
    /// Items of the checklist that this tap answers OK: what stands before the walk and is as it should be.
    pub answers: Vec<String>,
    /// The main button.
    pub main: Main,
}

/// The last end-of-day report.
#[uniffi::remote(Record)]
pub struct ReportRow {
    /// Its entry.
    pub id: EntryId,
    /// When.
    pub at: Stamp,
    /// By whom.
    pub by: Option<String>,
    /// It said that no defect was found.
    pub none_found: bool,
    /// How many it listed.
    pub listed: u32,
    /// Words for the next driver.
    pub to_next: Option<String>,
    /// Whether brake tanks were drained.
    pub tanks_drained: Option<bool>,
}

#[uniffi::export]
impl Phone {
    /// What the last one left on a unit. `seen` are the rows that have lain whole on the screen.
    ///
    /// # Errors
    /// As any read.
    pub fn last_report(&self, unit: TruckId, seen: Vec<String>) -> Result<LastReportScreen, PhoneError> {
        let query = LastReportQuery { unit, seen: seen.into_iter().collect() };
        self.read(|book, now| {
            Ok(screen::last_report(book.ledger(), &query, template(book)?, &book.standing()?, now)?)
        })
    }
}
