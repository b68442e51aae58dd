//! Figures as screens carry them.

use sumpbook_daybook::screen::{LeftHours, ReadingRow};
use sumpbook_trade::{EntryId, Stamp, Tenths};

/// Hours left on a clock, to a tenth and never rosier than they are (R14).
#[uniffi::remote(Enum)]
pub enum LeftHours {
    /// At least so many are left.
    Left(Tenths),
    /// So many past due.
    Past(Tenths),
}

/// A reading as a row.
#[uniffi::remote(Record)]
pub struct ReadingRow {
    /// Its entry.
    pub id: EntryId,
    /// When.
    pub at: Stamp,
    /// What the meter showed.
    pub figure: Tenths,
    /// Whether it counts.
    pub counts: bool,
    /// The most the meter could show then.
    pub ceiling: Option<Tenths>,
    /// A question about it is open.
    pub in_question: bool,
}
