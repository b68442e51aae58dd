//! A set that is laid up (P3).

use sumpbook_daybook::screen::LayUpRow;
use sumpbook_trade::{EntryId, Stamp, Tenths};

/// The lay-up in which the unit's set stands. Its clocks run on meanwhile.
#[uniffi::remote(Record)]
pub struct LayUpRow {
    /// The first lay-up's entry: the row's id.
    pub id: EntryId,
    /// Since when.
    pub since: Stamp,
    /// Who put it away.
    pub by: Option<String>,
    /// Compressor hours then.
    pub hours: Option<Tenths>,
    /// What was done before, in the words of whoever did it.
    pub done: Vec<String>,
    /// Lines of the list before its return that nobody answered, for the texts `return-...`.
    pub open_lines: Vec<String>,
    /// How many lines the list has.
    pub lines: u32,
    /// Lines that somebody waived.
    pub waived: u32,
}
