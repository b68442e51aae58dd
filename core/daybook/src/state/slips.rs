//! Slips that were typed into this phone: kept beside the books, for they are no entries. A certificate that
//! comes takes their place.

use std::collections::BTreeMap;

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use sumpbook_trade::defect::{Certified, Defect, DefectState, Said, Verdict};
use sumpbook_trade::record::RepairVerdict;
use sumpbook_trade::{EntryId, PersonId, Stamp, TruckId};
use uuid::Uuid;

use super::{UnitState, folded};
use crate::ledger::{Ledger, LedgerError};

const SLIPS: &str = "slips";
/// As many are kept; the oldest goes.
const MOST: usize = 200;
/// A slip whose code was right.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SlipShown {
    /// The unit.
    pub unit: TruckId,
    /// The entry that first found the defect.
    pub entry: EntryId,
    /// The item.
    pub item: String,
    /// Its place.
    pub place: Option<String>,
    /// What the code says.
    pub verdict: RepairVerdict,
    /// When it was typed.
    pub at: Stamp,
    /// By whom.
    pub person: Option<PersonId>,
}

impl Ledger {
    /// Slips that were shown to this phone, oldest first.
    ///
    /// # Errors
    /// As any read.
    pub fn slips(&self) -> Result<Vec<SlipShown>, LedgerError> {
        let kept = self.store().setting(SLIPS)?;
        Ok(kept.and_then(|bytes| folded::from_bytes(&bytes)).unwrap_or_default())
    }

    pub(crate) fn keep_slip(&mut self, shown: SlipShown) -> Result<(), LedgerError> {
        let mut all = self.slips()?;
        all.push(shown);
        let over = all.len().saturating_sub(MOST);
        all.drain(..over);
        let bytes = folded::to_bytes(&all)?;
        Ok(self.store_mut().set_setting(SLIPS, &bytes)?)
    }

    /// The state with what slips say of it. The shop, and most phones, have none.
    pub(super) fn with_slips(&self, mut state: UnitState) -> Result<UnitState, LedgerError> {
        let truck = state.truck;
        for slip in self.slips()?.iter().filter(|slip| slip.unit == truck) {
            show(&mut state, slip);
        }
        Ok(state)
    }

    /// The same of many.
    pub(super) fn with_slips_all(
        &self,
        states: &mut BTreeMap<TruckId, UnitState>,
    ) -> Result<(), LedgerError> {
        for slip in &self.slips()? {
            if let Some(state) = states.get_mut(&slip.unit) {
                show(state, slip);
            }
        }
        Ok(())
    }
}

/// Certified as the slip says, and awaiting review.
fn show(state: &mut UnitState, slip: &SlipShown) {
    for defect in state.defects.iter_mut().filter(|defect| is_of(defect, slip)) {
        let certified = certified(slip);
        for lock in state.locks.iter_mut().filter(|lock| lock.because == defect.reference) {
            lock.certified.get_or_insert(certified.at);
        }
        defect.state = DefectState::AwaitingReview { certified };
    }
}

/// Whether a slip is about an open defect as it stands: found again since, it is about what stood before.
fn is_of(defect: &Defect, slip: &SlipShown) -> bool {
    let found = |at: DateTime<FixedOffset>| at > slip.at.moment();
    let finding = |entry: Uuid| entry == slip.entry.0;
    let mut findings = defect.answers.iter().filter(|answer| answer.said != Said::Ok);
    defect.state == DefectState::Open
        && defect.item == slip.item
        && defect.place == slip.place
        && findings.clone().any(|answer| finding(answer.entry))
        && !findings.any(|answer| found(answer.at))
}

/// As a certificate that has no entry here yet.
fn certified(slip: &SlipShown) -> Certified {
    Certified {
        certificate: Uuid::nil(),
        at: slip.at.moment(),
        by: Uuid::nil(),
        verdict: match slip.verdict {
            RepairVerdict::Repaired => Verdict::Repaired,
            RepairVerdict::NotNeeded => Verdict::NotNeeded,
        },
        words: String::new(),
    }
}
