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
use crate::store::Store;

const SLIPS: &str = "slips";
const TRIES: &str = "slip-tries";
/// As many are kept; the oldest goes.
const MOST: usize = 200;
/// So many wrong codes are free; then each makes the next wait.
const FREE: u32 = 3;
const FIRST_WAIT_S: i64 = 30;
const LONGEST_WAIT_S: i64 = 3_600;

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

/// Wrong codes since the last right one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct SlipTries {
    wrong: u32,
    last_ms: i64,
}

impl SlipTries {
    pub(crate) fn read(store: &Store) -> Result<SlipTries, LedgerError> {
        Ok(store.setting(TRIES)?.and_then(|bytes| folded::from_bytes(&bytes)).unwrap_or_default())
    }

    pub(crate) fn keep(self, store: &mut Store) -> Result<(), LedgerError> {
        Ok(store.set_setting(TRIES, &folded::to_bytes(&self)?)?)
    }

    /// One try more, counted before it is looked at.
    pub(crate) fn one_more(self, now_ms: i64) -> SlipTries {
        SlipTries { wrong: self.wrong.saturating_add(1), last_ms: now_ms }
    }

    /// A clock set back begins the wait anew.
    pub(crate) fn seen_at(self, now_ms: i64) -> SlipTries {
        SlipTries { last_ms: self.last_ms.min(now_ms), ..self }
    }

    /// Seconds until the next try: none for the first three, then 30 s, doubled at each, at most an hour. A
    /// clock set forward shortens it; by hand nobody comes far in 100 thousand million codes.
    pub(crate) fn wait_s(self, now_ms: i64) -> i64 {
        let Some(over) = self.wrong.checked_sub(FREE) else { return 0 };
        let wait = FIRST_WAIT_S.saturating_mul(1i64 << over.min(10)).min(LONGEST_WAIT_S);
        let gone = now_ms.saturating_sub(self.last_ms).max(0);
        let left = wait.saturating_mul(1_000).saturating_sub(gone);
        (left.max(0).saturating_add(999)) / 1_000
    }
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_wrong_codes_are_free_and_then_each_doubles_the_wait_up_to_an_hour() {
        let mut tries = SlipTries::default();
        let mut waits = Vec::new();
        for _ in 0..12 {
            tries = tries.one_more(1_000);
            waits.push(tries.wait_s(1_000));
        }
        assert_eq!(waits, [0, 0, 30, 60, 120, 240, 480, 960, 1_920, 3_600, 3_600, 3_600]);
        assert_eq!(tries.wait_s(1_000 + 3_599_001), 1);
        assert_eq!(tries.wait_s(1_000 + 3_600_000), 0);
    }

    #[test]
    fn a_clock_set_back_does_not_shorten_the_wait() {
        let tries = SlipTries::default().one_more(0).one_more(0).one_more(90_000);
        assert_eq!(tries.wait_s(90_000), 30);
        assert_eq!(tries.wait_s(10_000), 30);
        let seen = tries.seen_at(10_000);
        assert_eq!((seen.wait_s(10_000), seen.wait_s(39_999), seen.wait_s(40_000)), (30, 1, 0));
    }
}
