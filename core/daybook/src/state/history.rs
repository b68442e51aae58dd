//! All of a unit's defects and readings, however long ago: for what goes out of the shop as proof.

use std::collections::BTreeSet;

use sumpbook_trade::defect::Defect;
use sumpbook_trade::{FactKind, TruckId};

use super::fold::{covered, is_inspection};
use super::scope::Scope;
use super::{ReadingNow, defects, hours, inputs};
use crate::ledger::{Ledger, LedgerError};

impl Ledger {
    /// Every defect of a unit, closed ones too, in the order they were found.
    ///
    /// # Errors
    /// As any read.
    pub fn every_defect(&self, truck: TruckId) -> Result<Vec<Defect>, LedgerError> {
        let truth = self.store().truth();
        let scope = Scope::of(self.store().truth(), self.fleet(), truck);
        let entries = scope.bearing(i64::MAX)?;
        let days: BTreeSet<i32> =
            entries.iter().filter(|b| is_inspection(&b.entry)).map(|b| b.fact.day).collect();
        let beside = inputs::sections_beside(&truth, truck, &days, i64::MAX)?;
        let own = entries.iter().chain(&beside).filter(|bearing| scope.is_own(bearing));
        let covered = covered(own, scope.fleet.numbers.covers());
        let looked = scope.of_kind(FactKind::LevelCheck, i64::MAX)?;
        let told = (entries.as_slice(), beside.as_slice(), looked.as_slice());
        Ok(defects::of_unit(&scope, told, &covered, i64::MAX)?.0.defects)
    }

    /// Every reading of a unit's compressor hours as R3 judges it, struck ones too, in the order of their times.
    ///
    /// # Errors
    /// As any read.
    pub fn every_reading(&self, truck: TruckId) -> Result<Vec<ReadingNow>, LedgerError> {
        let judged = hours::ledger_of(self, truck, i64::MAX)?;
        Ok(judged.rows().iter().filter(|row| hours::is_reading(row)).map(hours::shown).collect())
    }
}
