//! What belongs to another unit (P3): picked, and moved there.

use sumpbook_daybook::LedgerError;
use sumpbook_daybook::draft::moved;
use sumpbook_daybook::screen::{self, MovableRow, OtherUnitQuery, OtherUnitScreen};
use sumpbook_trade::record::Glass;
use sumpbook_trade::{EntryId, FactKind, Figure, Fluid, PersonId, Stamp, Tenths, TruckId};

use crate::drafts::{Signed, fresh, record, signing};
use crate::error::PhoneError;
use crate::listener::ChangeSet;
use crate::phone::Phone;
use crate::record::Said;

/// What can be moved.
#[uniffi::remote(Record)]
pub struct OtherUnitScreen {
    /// The unit's door number.
    pub door: String,
    /// This person's entries of these days that can be moved, newest first.
    pub rows: Vec<MovableRow>,
}

/// An entry that can be moved, with what it says.
#[uniffi::remote(Record)]
pub struct MovableRow {
    /// The entry: the row's id.
    pub id: EntryId,
    /// Its kind, for the text `kind-...`.
    pub kind: FactKind,
    /// When.
    pub at: Stamp,
    /// The meter's figure in it.
    pub hours: Option<Tenths>,
    /// The level it saw, or came to.
    pub glass: Option<Glass>,
    /// What was poured.
    pub fluid: Option<Fluid>,
    /// How much, each pour.
    pub volumes: Vec<Figure>,
    /// What the display showed, or what was said.
    pub words: Option<String>,
}

#[uniffi::export]
impl Phone {
    /// What of a unit's entries of the last days this person may move to another unit.
    ///
    /// # Errors
    /// As any read.
    pub fn other_unit(
        &self,
        unit: TruckId,
        person: PersonId,
        days_back: u16,
    ) -> Result<OtherUnitScreen, PhoneError> {
        self.read(|book, now| {
            Ok(screen::other_unit(book.ledger(), &OtherUnitQuery { unit, person, days_back }, now)?)
        })
    }

    /// Moves an entry of one's own from the unit in `said` to the one it belongs to: void here, anew there, both are
    /// seen. Gives the new entry's id, which is `said.id` where one was given: trying again moves nothing twice.
    ///
    /// # Errors
    /// `Entry` when it is no entry of this person's on that unit that counts, or is of a kind that is not moved; as
    /// any write. Then nothing was moved.
    pub fn belongs_to(&self, said: Said, entry: EntryId, to: TruckId) -> Result<EntryId, PhoneError> {
        self.change(ChangeSet::RECORDED, |book, now| {
            let truth = book.ledger().store().truth();
            let anew = match said.id {
                Some(id) if truth.has_id(id).map_err(LedgerError::from)? => return Ok(id),
                Some(id) => id,
                None => fresh(now)?,
            };
            let known = book.ledger().fleet().trucks.contains_key(&to) && to != said.unit;
            let wrong = screen::movable(book.ledger(), said.unit, said.person, entry)?.filter(|_| known);
            let wrong = wrong.ok_or_else(|| PhoneError::Entry {
                reason: "no entry of this person's on this unit that can be moved there".to_owned(),
            })?;
            let Said { pin_given, trainer, trainer_pin_given, .. } = said;
            let signing = signing(book, &Signed { pin_given, trainer, trainer_pin_given }, now)?;
            let both = moved(book.ledger().fleet(), &wrong, to, &signing, (anew, fresh(now)?));
            record(book, both.into(), now)?;
            Ok(anew)
        })
    }
}
