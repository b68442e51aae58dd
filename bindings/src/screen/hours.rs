//! A true figure (P13).

use sumpbook_daybook::screen::{self, HoursQuery, HoursScreen, Main, OtherMeterRow, QuestionRow, ReadingRow};
use sumpbook_trade::hours::KeyboardAnswer;
use sumpbook_trade::record::Meter;
use sumpbook_trade::{EntryId, Tenths, TruckId};

use crate::error::PhoneError;
use crate::phone::Phone;

/// The hours of one meter.
#[uniffi::remote(Record)]
pub struct HoursScreen {
    /// The unit's door number.
    pub door: String,
    /// Which meter.
    pub meter: Meter,
    /// The last reading that counts; none: this is the first.
    pub last: Option<ReadingRow>,
    /// The most this meter can show now.
    pub ceiling: Option<Tenths>,
    /// The unit has no hour meter on its compressor: hours are counted from starts and stops.
    pub counted: bool,
    /// The figure as typed.
    pub typed: Option<Tenths>,
    /// Its rise over the last one.
    pub rise: Option<Tenths>,
    /// What is asked about it; none before one is typed.
    pub asked: Option<KeyboardAnswer>,
    /// Questions that are open already.
    pub questions: Vec<QuestionRow>,
    /// The due list uses the higher of two disputed figures.
    pub higher_of_disputed: bool,
    /// Other meters of this unit, each judged by itself, as they last read.
    pub others: Vec<OtherMeterRow>,
    /// The main button.
    pub main: Main,
}

/// An open question about readings.
#[uniffi::remote(Record)]
pub struct QuestionRow {
    /// Its id: the first entry that disputes.
    pub id: Option<EntryId>,
    /// Why it is asked, for the text `question-...`.
    pub why: String,
    /// Readings that stand for now.
    pub standing: Vec<ReadingRow>,
    /// Readings that dispute them.
    pub disputing: Vec<ReadingRow>,
    /// What may have happened, for the texts `hint-...`.
    pub hints: Vec<String>,
}

#[uniffi::export]
impl Phone {
    /// The hours of a unit by one of its meters, and what is asked about the figure typed.
    ///
    /// # Errors
    /// As any read.
    pub fn hours(
        &self,
        unit: TruckId,
        typed: Option<Tenths>,
        meter: Meter,
    ) -> Result<HoursScreen, PhoneError> {
        self.read(|book, now| Ok(screen::hours(book.ledger(), &HoursQuery { unit, meter, typed }, now)?))
    }
}
