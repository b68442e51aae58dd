//! What the next driver will read (P14).

use sumpbook_daybook::screen::{
    self, EndOfDayNotice, EndOfDayScreen, FoundRow, Main, NoteRow, PourRow, ReadingRow, SiteAsk,
};
use sumpbook_trade::checklist::Severity;
use sumpbook_trade::record::SiteDust;
use sumpbook_trade::{EntryId, Figure, Stamp, Tenths};

use crate::error::PhoneError;
use crate::phone::Phone;

/// An end-of-day report under way.
#[uniffi::remote(Record)]
pub struct EndOfDayScreen {
    /// The draft.
    pub draft: EntryId,
    /// The unit's door number.
    pub door: String,
    /// Since when the pre-trip that this ends covers; none: no pre-trip.
    pub covers_from: Option<Stamp>,
    /// Defects named so far.
    pub found: Vec<FoundRow>,
    /// "None found" was said.
    pub none_found: bool,
    /// Display notes of today.
    pub notes: Vec<NoteRow>,
    /// Top-ups of today.
    pub poured: Vec<PourRow>,
    /// The last reading that counts.
    pub last_hours: Option<ReadingRow>,
    /// Hours given.
    pub hours: Option<Tenths>,
    /// Odometer given.
    pub odometer: Option<Figure>,
    /// Whether draining the tanks is asked at all.
    pub asks_tanks: bool,
    /// The answer.
    pub tanks_drained: Option<bool>,
    /// How dusty the site was, as chosen for this report.
    pub dust: Option<SiteDust>,
    /// Whether that is asked, and what was said of it today; none where the dust does not count.
    pub site: Option<SiteAsk>,
    /// Words for the next driver.
    pub to_next: Option<String>,
    /// What stands above the button.
    pub notices: Vec<EndOfDayNotice>,
    /// The main button.
    pub main: Main,
}

/// Something said above the button. It keeps nobody from signing.
#[uniffi::remote(Enum)]
pub enum EndOfDayNotice {
    /// No pre-trip covers today.
    NoPreTrip,
    /// Air was started and no stop is recorded: the steps of leaving come first.
    AirStillOn,
}

/// A defect named in the report so far.
#[uniffi::remote(Record)]
pub struct FoundRow {
    /// The row's id: item and place.
    pub id: String,
    /// The item.
    pub item: String,
    /// Its place.
    pub place: Option<String>,
    /// Key of the word chosen.
    pub word: Option<String>,
    /// What it locks.
    pub severity: Option<Severity>,
}

#[uniffi::export]
impl Phone {
    /// An end-of-day report as it stands.
    ///
    /// # Errors
    /// `Draft` when there is no such report; as any read.
    pub fn end_of_day(&self, draft: EntryId) -> Result<EndOfDayScreen, PhoneError> {
        self.read(|book, now| {
            Ok(screen::end_of_day(book.ledger(), &crate::drafts::end_of_day(book, draft)?, now)?)
        })
    }
}
