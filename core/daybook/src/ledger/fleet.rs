//! Keeping the folded fleet in step with the fleet book.

use sumpbook_trade::{Entry, FactKind};

use super::{Knowledge, Ledger, LedgerError};
use crate::book::{BookId, EntryRow};
use crate::fleet::Fleet;
use crate::gate::PublicKey;
use crate::judgement::Judged;
use crate::store::{HeldEntry, Truth, Writing};

impl Ledger {
    /// Keeps the folded fleet, so that the next opening need not fold it.
    pub(crate) fn keep_fleet(&mut self) -> Result<(), LedgerError> {
        let op = i64::try_from(self.knows.fleet_op).unwrap_or(i64::MAX);
        if self.store.truth().fleet_body()?.is_some_and(|(kept, _)| kept == op) {
            return Ok(());
        }
        let body = serde_json::to_vec(&self.knows.fleet)?;
        let writing = self.store.begin()?;
        writing.put_fleet(op, &body)?;
        writing.commit()?;
        Ok(())
    }
}

impl Knowledge {
    /// Reads the fleet: the folded one when it is of the newest fleet book, else the book.
    pub(super) fn load_fleet(&mut self, truth: &Truth<'_>) -> Result<(), LedgerError> {
        let highest = fleet_op(truth)?;
        let folded = match truth.fleet_body()? {
            Some((op, body)) if op.unsigned_abs() == highest => serde_json::from_slice(&body).ok(),
            _ => None,
        };
        self.fleet = match folded {
            Some(fleet) => fleet,
            None => fold(truth)?,
        };
        self.fleet_op = highest;
        self.learn_keys();
        Ok(())
    }

    /// Projects an entry that was just written, and learns from it when the shop wrote it in the fleet book.
    pub(super) fn project_and_learn(
        &mut self,
        writing: &Writing<'_>,
        n: i64,
        row: &EntryRow,
    ) -> Result<(), LedgerError> {
        let Some(entry) = self.project(writing, n, row)? else { return Ok(()) };
        if row.book != BookId::Fleet || row.actor.key() != self.root.shop.id() {
            return Ok(());
        }
        let zone_before = self.fleet.zone;
        if row.op > self.fleet_op {
            self.fleet.take(&entry);
            self.fleet_op = row.op;
        } else {
            self.fleet = fold(&writing.truth())?;
        }
        self.learn_keys();
        if self.fleet.zone != zone_before {
            // Yard days are cut in the yard's zone: every entry's day may be another now.
            self.project_all(writing)?;
        } else if entry.fact.kind() == FactKind::DeviceRevoked {
            self.project_of_revoked(writing, &entry)?;
        }
        Ok(())
    }

    fn learn_keys(&mut self) {
        for (_, device) in &self.fleet.devices {
            if let Ok(key) = PublicKey::from_bytes(&device.key.0) {
                self.keys.insert(key.id(), key);
            }
        }
    }
}

fn fleet_op(truth: &Truth<'_>) -> Result<u64, LedgerError> {
    let heads = truth.heads(BookId::Fleet)?;
    let mut highest = 0;
    for head in heads {
        highest = highest.max(truth.op_of(BookId::Fleet, &head)?.unwrap_or(0));
    }
    Ok(highest)
}

/// Folds the whole fleet book in the order of ops, which is the same on every device.
fn fold(truth: &Truth<'_>) -> Result<Fleet, LedgerError> {
    let mut rows: Vec<HeldEntry> = truth.of_book(BookId::Fleet)?;
    rows.sort_by_key(|held| (held.row.op, held.row.hash));
    let mut fleet = Fleet::default();
    for held in rows {
        let counts = truth.fact(held.n)?.is_some_and(|fact| fact.judged == Judged::Counts);
        if counts && let Ok(entry) = Entry::from_payload(&held.row.payload) {
            fleet.take(&entry);
        }
    }
    Ok(fleet)
}
