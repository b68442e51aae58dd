//! What the display said, and who knows (P12).

use sumpbook_daybook::screen::{self, AckRow, DisplayQuery, DisplayScreen, Main, News, NoteRow, ShopSaysRow};
use sumpbook_trade::record::NoteKind;
use sumpbook_trade::{EntryId, Stamp, TruckId};

use crate::error::PhoneError;
use crate::phone::Phone;

/// The display notes of a unit.
#[uniffi::remote(Record)]
pub struct DisplayScreen {
    /// The unit's door number.
    pub door: String,
    /// How old the shop's news is.
    pub news: News,
    /// The note being answered.
    pub note: Option<NoteRow>,
    /// The note being answered is only on this phone: that the shop was told, somebody did by word of mouth.
    pub note_only_here: bool,
    /// Other notes that are not gone, newest first.
    pub open: Vec<NoteRow>,
    /// How often it stopped by itself today.
    pub stopped_today: u32,
    /// What the shop says to each kind of note, in its own words; a kind it set none for is not here.
    pub shop_says: Vec<ShopSaysRow>,
    /// The main button.
    pub main: Main,
}

/// What the shop says to a kind of note.
#[uniffi::remote(Record)]
pub struct ShopSaysRow {
    /// The kind.
    pub what: NoteKind,
    /// The shop's words.
    pub words: String,
}

/// One note.
#[uniffi::remote(Record)]
pub struct NoteRow {
    /// Its entry: the row's id.
    pub id: EntryId,
    /// What kind.
    pub what: NoteKind,
    /// As it stood there.
    pub as_shown: String,
    /// When.
    pub at: Stamp,
    /// Who wrote it down.
    pub by: Option<String>,
    /// The unit stopped by itself.
    pub stopped_by_itself: Option<bool>,
    /// The answer that stands (R5).
    pub first: Option<AckRow>,
    /// The first that told the shop, when it is another.
    pub told: Option<AckRow>,
    /// The rest, in order of time; those dated before the note are the last.
    pub others: Vec<AckRow>,
    /// First seen gone again.
    pub gone: Option<Stamp>,
}

/// Somebody's answer to a note.
#[uniffi::remote(Record)]
pub struct AckRow {
    /// Its entry.
    pub id: EntryId,
    /// Who.
    pub by: Option<String>,
    /// When.
    pub at: Stamp,
    /// The shop was told; otherwise it was only seen.
    pub told_shop: bool,
    /// Dated before the note, by a slow clock: shown and not counted (R5). Its words: `ack-before-note`.
    pub before_note: bool,
}

#[uniffi::export]
impl Phone {
    /// The display notes of a unit; with `note` the one that is being answered.
    ///
    /// # Errors
    /// As any read.
    pub fn display(&self, unit: TruckId, note: Option<EntryId>) -> Result<DisplayScreen, PhoneError> {
        self.read(|book, now| {
            Ok(screen::display(book.ledger(), &DisplayQuery { unit, note }, &book.standing()?, now)?)
        })
    }
}
