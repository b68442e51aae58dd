//! What a camera read where a door tag or a drum's label was wanted.

use sumpbook_daybook::label::{self, DoorScan, NotADrum, NotAUnit};
use sumpbook_trade::{EntryId, TruckId};

use crate::error::PhoneError;
use crate::phone::Phone;

/// A scanned text, where a door tag was wanted.
#[uniffi::remote(Record)]
pub struct DoorScan {
    /// The unit that is meant.
    pub unit: Option<TruckId>,
    /// Why none is.
    pub no: Option<NotAUnit>,
    /// The door number on it, or the beginning of what it says.
    pub says: Option<String>,
}

/// Why a scanned text opens no unit, for the texts `scan-...`.
#[uniffi::remote(Enum)]
pub enum NotAUnit {
    /// The door tag of another fleet.
    OtherFleet,
    /// A door tag of this fleet, of a truck this phone does not know.
    NotHere,
    /// A door tag of this fleet, of another truck than the one that bears the number now.
    OtherTruck,
    /// A drum's label.
    DrumLabel,
    /// The shop's code for a new phone.
    ShopCode,
    /// None of ours.
    NoTag,
}

/// Why a scanned text says nothing of a drum, for the texts `scan-...`; the top-up stays as it was.
#[uniffi::remote(Enum)]
pub enum NotADrum {
    /// A unit's door tag.
    DoorTag,
    /// The shop's code for a new phone.
    ShopCode,
}

#[uniffi::export]
impl Phone {
    /// The unit that a scanned text means. Nothing is opened by guessing.
    ///
    /// # Errors
    /// As any read.
    pub fn door_scan(&self, text: String) -> Result<DoorScan, PhoneError> {
        self.read(|book, _| {
            let ledger = book.ledger();
            Ok(label::door_scan(ledger.root().fleet, ledger.fleet(), &text))
        })
    }

    /// Says of a top-up what the drum's label told a camera; a code that is none of ours is an unknown drum. Gives why
    /// the text is about no drum, when it is: then nothing is said.
    ///
    /// # Errors
    /// `Draft` when there is no such top-up; as any write.
    pub fn scan_drum(&self, draft: EntryId, text: String) -> Result<Option<NotADrum>, PhoneError> {
        let mut no = None;
        self.pouring(draft, |top_up| {
            no = top_up.scans_drum(&text).err();
            Ok(())
        })?;
        Ok(no)
    }
}
