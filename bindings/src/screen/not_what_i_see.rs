//! What the last report says is not what is seen (P4).

use sumpbook_daybook::screen::{self, ToldAgain};
use sumpbook_trade::EntryId;

use crate::checklist::template;
use crate::error::PhoneError;
use crate::phone::Phone;

/// A defect that is not over, and where the walk asks for it.
#[uniffi::remote(Record)]
pub struct ToldAgain {
    /// The item, for the text `item-...`.
    pub item: String,
    /// Its place.
    pub place: Option<String>,
    /// Label of the stop; none: this walk has no line like it.
    pub stop: Option<String>,
    /// The line's row id there.
    pub line: Option<String>,
}

#[uniffi::export]
impl Phone {
    /// Every defect of a pre-trip's unit that is not over, with the line of the walk it is told on again.
    ///
    /// # Errors
    /// `Draft` when there is no such pre-trip; as any read.
    pub fn not_what_i_see(&self, draft: EntryId) -> Result<Vec<ToldAgain>, PhoneError> {
        self.read(|book, now| {
            let draft = crate::drafts::pre_trip(book, draft)?;
            Ok(screen::not_what_i_see(book.ledger(), &draft, template(book)?, now)?)
        })
    }
}
