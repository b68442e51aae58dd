//! A certificate's slip typed in where no network reaches.

use sumpbook_daybook::gate::SlipCode;
use sumpbook_trade::record::{DefectName, RepairVerdict};
use sumpbook_trade::{PersonId, TruckId};

use crate::error::PhoneError;
use crate::listener::ChangeSet;
use crate::phone::Phone;

/// How many digits a slip's code has.
#[uniffi::export]
pub fn slip_digits() -> u8 {
    SlipCode::DIGITS
}

#[uniffi::export]
impl Phone {
    /// Takes a slip's code for a defect that locks a unit. It shows as certified until the certificate itself comes.
    ///
    /// # Errors
    /// `Slip`; then what is locked stays so.
    pub fn accept_slip(
        &self,
        code: String,
        unit: TruckId,
        defect: DefectName,
        person: Option<PersonId>,
    ) -> Result<RepairVerdict, PhoneError> {
        self.change(ChangeSet::RECORDED, |book, now| Ok(book.accept_slip(&code, unit, &defect, person, now)?))
    }
}
