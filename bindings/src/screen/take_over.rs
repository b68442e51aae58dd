//! The first driver's record, as the second one reads it (P4 of a short walk).

use sumpbook_daybook::screen::{self, DefectRow, Main, News, SignRow, TakeOverQuery, TakeOverScreen};
use sumpbook_trade::{EntryId, Stamp, Tenths, TruckId};

use crate::checklist::template;
use crate::error::PhoneError;
use crate::phone::Phone;

/// The first driver's record.
#[uniffi::remote(Record)]
pub struct TakeOverScreen {
    /// The unit's door number.
    pub door: String,
    /// How old the shop's news is.
    pub news: News,
    /// Who signed stops of it, in order of time.
    pub by: Vec<String>,
    /// When the last of them signed.
    pub at: Stamp,
    /// Lines that were OK.
    pub ok: u32,
    /// Of them, answered together with others of their stop.
    pub ok_together: u32,
    /// What could not be checked, and what this unit was said not to have.
    pub not_checked: Vec<SignRow>,
    /// Answers that carry a figure: glass, drops.
    pub figures: Vec<SignRow>,
    /// Compressor hours as read on it.
    pub hours: Option<Tenths>,
    /// Every defect of the unit that is not over, earliest first.
    pub defects: Vec<DefectRow>,
    /// Certificates that the review names.
    pub to_review: Vec<EntryId>,
    /// Stops that are walked again.
    pub stops: u32,
    /// The main button.
    pub main: Main,
}

#[uniffi::export]
impl Phone {
    /// The record of the walk that a short one follows. `seen` are the defects that have lain whole on the screen.
    ///
    /// # Errors
    /// `Argument` when no such walk of this unit is held here; as any read.
    pub fn take_over(
        &self,
        unit: TruckId,
        after: EntryId,
        seen: Vec<String>,
    ) -> Result<TakeOverScreen, PhoneError> {
        let query = TakeOverQuery { unit, after, seen: seen.into_iter().collect() };
        let found = self.read(|book, now| {
            Ok(screen::take_over(book.ledger(), &query, template(book)?, &book.standing()?, now)?)
        })?;
        found.ok_or_else(|| PhoneError::Argument {
            what: "after".to_owned(),
            reason: format!("no walk {after} of this unit is held here"),
        })
    }
}
