//! A certificate's slip typed in: the shop's word where no network reaches.

use sumpbook_trade::defect::{Defect, DefectState, Said};
use sumpbook_trade::record::{DefectName, RepairVerdict};
use sumpbook_trade::{EntryId, PersonId, Stamp, TruckId};

use super::Daybook;
use crate::gate::{SlipCode, SlipCodeError};
use crate::ledger::LedgerError;
use crate::state::{SlipShown, Tries};

const TRIES: &str = "slip-tries";

/// Why a slip's code was not taken. In every case nothing was changed: what is locked stays locked.
#[derive(Debug, thiserror::Error)]
pub enum SlipError {
    /// What was typed is no code.
    #[error(transparent)]
    Code(#[from] SlipCodeError),
    /// It is a code of something else.
    #[error(
        "This code is not for this defect on this phone. Nothing was changed. Look on the slip for this phone's \
         name and this defect, or call the shop."
    )]
    Wrong {
        /// Seconds until the next try; 0 at first.
        wait_s: i64,
    },
    /// Too many wrong ones: this one was not even looked at.
    #[error("Too many codes were wrong. This one was not looked at. Wait {wait_s} s, then type it again.")]
    Wait {
        /// Seconds until the next try.
        wait_s: i64,
    },
    /// No such defect is open and locks something.
    #[error(
        "Nothing is locked by that defect, or it is certified already. Nothing was changed. Look at the unit \
         again."
    )]
    NothingLocked,
    /// The books said no.
    #[error(transparent)]
    Ledger(#[from] LedgerError),
}

impl SlipError {
    /// Key of its words in the texts; they may use `seconds`.
    pub fn text_key(&self) -> &'static str {
        match self {
            SlipError::Code(SlipCodeError::Length(_)) => "error-slip-length",
            SlipError::Code(SlipCodeError::Mistyped) => "error-slip-mistyped",
            SlipError::Wrong { wait_s: 0 } => "error-slip-wrong",
            SlipError::Wrong { .. } => "error-slip-wrong-wait",
            SlipError::Wait { .. } => "error-slip-wait",
            SlipError::NothingLocked => "error-slip-nothing-locked",
            SlipError::Ledger(_) => "error-slip-book",
        }
    }
}

impl Daybook {
    /// Takes a slip's code for a defect that locks a unit, named by any of its findings. What it locks shows as
    /// certified and awaiting review on this phone; the lock ends when the certificate itself has come and been
    /// reviewed. A try is counted before it is looked at, so that no restart gives it back.
    ///
    /// # Errors
    /// [`SlipError`]; then what is locked stays as it was.
    pub fn accept_slip(
        &mut self,
        code: &str,
        unit: TruckId,
        defect: &DefectName,
        person: Option<PersonId>,
        now: Stamp,
    ) -> Result<RepairVerdict, SlipError> {
        // Mistyped is no try: its last digit shows it before anything secret is asked.
        let code: SlipCode = code.parse()?;
        let ledger = self.ledger_mut();
        let state = ledger.unit_state(unit)?;
        let open = |found: &&Defect| {
            found.state == DefectState::Open && !found.parts.is_empty() && names(found, defect)
        };
        let found = state.defects.iter().find(open).ok_or(SlipError::NothingLocked)?;
        let tries = Tries::read(ledger.store(), TRIES)?;
        let wait_s = tries.wait_s(now.unix_ms());
        if wait_s > 0 {
            tries.seen_at(now.unix_ms()).keep(ledger.store_mut(), TRIES)?;
            return Err(SlipError::Wait { wait_s });
        }
        let tries = tries.one_more(now.unix_ms());
        tries.keep(ledger.store_mut(), TRIES)?;
        let (root, own) = (ledger.root(), ledger.own_key());
        let both = [RepairVerdict::Repaired, RepairVerdict::NotNeeded];
        let right = findings(found).find_map(|entry| {
            let name = DefectName { entry, item: found.item.clone(), place: found.place.clone() };
            let of = |verdict: &RepairVerdict| SlipCode::of(own, &root.shop, root.fleet, &name, *verdict);
            both.into_iter().find(|verdict| of(verdict) == code)
        });
        let Some(verdict) = right else {
            return Err(SlipError::Wrong { wait_s: tries.wait_s(now.unix_ms()) });
        };
        let shown = SlipShown {
            unit,
            entry: EntryId(found.reference.entry),
            item: found.item.clone(),
            place: found.place.clone(),
            verdict,
            at: now,
            person,
        };
        ledger.keep_slip(shown)?;
        Tries::default().keep(ledger.store_mut(), TRIES)?;
        Ok(verdict)
    }
}

/// Whether a defect is the named one: by the item, and by any entry that found it.
fn names(defect: &Defect, name: &DefectName) -> bool {
    let same = defect.item == name.item && defect.place == name.place;
    same && findings(defect).any(|entry| entry == name.entry)
}

/// Entries that found it: the shop may know of more than this phone, and prints the one it is sure of.
fn findings(defect: &Defect) -> impl Iterator<Item = EntryId> {
    defect.answers.iter().filter(|answer| answer.said != Said::Ok).map(|answer| EntryId(answer.entry))
}
