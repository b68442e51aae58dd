//! One writing transaction: everything or nothing.

use sumpbook_trade::record::Digest;
use sumpbook_trade::{EntryId, TruckId};

use super::facts::{self, FactRow};
use super::{HeldEntry, Store, StoreError, Transaction, Truth, photos, truth, units};
use crate::book::{BookId, EntryRow};
use crate::gate::ChangeHash;

/// A transaction that holds the writer's lock since it began. Dropped without [`Writing::commit`], nothing happened.
pub struct Writing<'c>(Transaction<'c>);

impl Store {
    /// Begins writing.
    ///
    /// # Errors
    /// [`StoreError::Busy`] when another process writes for more than five seconds.
    pub fn begin(&mut self) -> Result<Writing<'_>, StoreError> {
        self.write().map(Writing)
    }
}

impl Writing<'_> {
    /// The truth as this transaction sees it.
    pub fn truth(&self) -> Truth<'_> {
        Truth(&self.0)
    }

    /// Admits a row; the caller has checked it. Returns its number.
    ///
    /// # Errors
    /// As any write.
    pub fn insert(
        &self,
        row: &EntryRow,
        previous: Option<ChangeHash>,
        received_ms: i64,
        carrier: Option<[u8; 8]>,
    ) -> Result<i64, StoreError> {
        truth::insert(&self.0, None, row, previous, received_ms, carrier)
    }

    /// Takes over a row of another store under the number it has there: the exchange log and closed sheets
    /// name entries by number, and numbers have gaps where a branch was taken out.
    ///
    /// # Errors
    /// As any write; a number that is taken is refused.
    pub fn take_over(&self, held: &HeldEntry, previous: Option<ChangeHash>) -> Result<(), StoreError> {
        truth::insert(&self.0, Some(held.n), &held.row, previous, held.received_ms, held.carrier)?;
        Ok(())
    }

    /// Takes rows of one book out again: only for a branch that lost a fork.
    ///
    /// # Errors
    /// As any write.
    pub fn remove(&self, book: BookId, rows: &[HeldEntry]) -> Result<(), StoreError> {
        for held in rows {
            truth::remove(&self.0, held)?;
        }
        truth::reset_heads(&self.0, book)
    }

    /// Writes the projection of one entry; `new` when it has none yet.
    ///
    /// # Errors
    /// As any write.
    pub fn put_fact(&self, fact: &FactRow, new: bool) -> Result<(), StoreError> {
        facts::put(&self.0, fact, new)
    }

    /// Notes which photos and which sounds an entry names.
    ///
    /// # Errors
    /// As any write.
    pub fn put_photos(&self, n: i64, photos: &[Digest], sounds: &[Digest]) -> Result<(), StoreError> {
        photos::put(&self.0, n, photos, sounds)
    }

    /// Notes that entry `by` decides about `target`, or that it no longer does.
    ///
    /// # Errors
    /// As any write.
    pub fn put_decided(
        &self,
        target: EntryId,
        by: i64,
        verdict: Option<(u16, i64)>,
    ) -> Result<(), StoreError> {
        match verdict {
            Some((kind, verdict)) => facts::put_decided(&self.0, target, by, kind, verdict),
            None => {
                self.0
                    .prepare_cached("DELETE FROM decided WHERE target = ?1 AND by_entry = ?2")?
                    .execute((target.bytes(), by))?;
                Ok(())
            }
        }
    }

    /// Keeps the folded fleet under the number its change was given.
    ///
    /// # Errors
    /// As any write.
    pub fn put_fleet(&self, version: i64, body: &[u8]) -> Result<(), StoreError> {
        units::put_fleet(&self.0, version, body)
    }

    /// The fleet is another now: drops the folded one and returns the number of this change.
    ///
    /// # Errors
    /// As any write.
    pub fn change_fleet(&self) -> Result<i64, StoreError> {
        units::change_fleet(&self.0)
    }

    /// One unit's state, or every unit's, must be folded again before it is read.
    ///
    /// # Errors
    /// As any write.
    pub fn mark_stale(&self, truck: Option<TruckId>) -> Result<(), StoreError> {
        units::mark_stale(&self.0, truck)
    }

    /// Drops a draft in the same breath as its entry is written.
    ///
    /// # Errors
    /// As any write.
    pub fn drop_draft(&self, id: EntryId) -> Result<(), StoreError> {
        self.0.prepare_cached("DELETE FROM draft WHERE id = ?1")?.execute([id.bytes()])?;
        Ok(())
    }

    /// Empties every projection.
    ///
    /// # Errors
    /// As any write.
    pub fn clear_projections(&self) -> Result<(), StoreError> {
        self.0.execute_batch(
            "DELETE FROM fact; DELETE FROM aside; DELETE FROM decided; DELETE FROM lock_out;
             DELETE FROM unit; DELETE FROM photo_named;",
        )?;
        units::change_fleet(&self.0)?;
        Ok(())
    }

    /// Makes it durable.
    ///
    /// # Errors
    /// When the disk refuses; then nothing happened.
    pub fn commit(self) -> Result<(), StoreError> {
        self.0.commit()
    }
}
