//! One entry that is set aside, opened (P16).

use sumpbook_daybook::screen::{self, AboutRow, Aside, MovableRow, ReadingRow, SetAsideScreen};
use sumpbook_trade::{EntryId, Stamp, TruckId};

use crate::error::PhoneError;
use crate::phone::Phone;

/// An entry that is set aside.
#[uniffi::remote(Record)]
pub struct SetAsideScreen {
    /// The entry.
    pub id: EntryId,
    /// Its unit; none for a matter of the fleet.
    pub unit: Option<TruckId>,
    /// That unit's door number.
    pub door: Option<String>,
    /// What it says; none where this program cannot read it.
    pub says: Option<MovableRow>,
    /// Who wrote it.
    pub by: Option<String>,
    /// Why it is set aside, for the texts `aside-why-...` and, what to do, `aside-do-...`; none: it counts again.
    pub why: Option<Aside>,
    /// The figure that does not fit, with the most the meter could show then.
    pub reading: Option<ReadingRow>,
    /// What may have happened to that figure, for the texts `hint-...`.
    pub hints: Vec<String>,
    /// What was said about it, in order of time.
    pub about: Vec<AboutRow>,
}

/// What a person said about an entry: a decision of the shop, a correction, that it belongs to another unit.
#[uniffi::remote(Record)]
pub struct AboutRow {
    /// Its entry: the row's id.
    pub id: EntryId,
    /// When.
    pub at: Stamp,
    /// Who; none when nobody here knows the name.
    pub by: Option<String>,
    /// Why, in their own words.
    pub words: Option<String>,
    /// The unit it belongs to, by its door number.
    pub belongs_to: Option<String>,
}

#[uniffi::export]
impl Phone {
    /// One of this phone's entries that is set aside; none when this phone did not write it.
    ///
    /// # Errors
    /// As any read.
    pub fn set_aside(&self, entry: EntryId) -> Result<Option<SetAsideScreen>, PhoneError> {
        self.read(|book, _| Ok(screen::set_aside(book.ledger(), entry, &book.standing()?)?))
    }
}
