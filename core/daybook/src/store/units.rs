//! The folded state of each unit, and its lock-outs.

use rusqlite::OptionalExtension;
use sumpbook_trade::TruckId;

use super::{Store, StoreError, Transaction, Truth};
use crate::gate::{Actor, KeyId};

/// One lock-out as the projection has it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LockRow {
    /// The unit.
    pub truck: TruckId,
    /// `road`, `air`, or the outlet's name after `outlet/`.
    pub part: String,
    /// Number of the entry that opened it.
    pub opened: i64,
    /// Since when, milliseconds.
    pub since_ms: i64,
    /// When it ended; none while it stands.
    pub ended_ms: Option<i64>,
}

pub(super) const BODIES: &str =
    "SELECT truck, body FROM unit WHERE stale = 0 AND body IS NOT NULL ORDER BY truck";
pub(super) const LOCKS_SINCE: &str = "
    SELECT u.truck, l.part, l.opened, l.since, l.ended FROM lock_out l JOIN unit u ON u.no = l.unit
    WHERE l.ended IS NULL
    UNION ALL
    SELECT u.truck, l.part, l.opened, l.since, l.ended FROM lock_out l JOIN unit u ON u.no = l.unit
    WHERE l.ended >= ?1
    ORDER BY 1, 4, 2";

impl Truth<'_> {
    pub(super) fn unit_no(&self, truck: TruckId) -> Result<Option<i64>, StoreError> {
        let mut query = self.0.prepare_cached("SELECT no FROM unit WHERE truck = ?1")?;
        Ok(query.query_row([truck.bytes()], |row| row.get(0)).optional()?)
    }

    /// Units whose state must be folded again before it is read.
    ///
    /// # Errors
    /// As any read.
    pub fn stale_units(&self) -> Result<Vec<TruckId>, StoreError> {
        let mut query = self.0.prepare_cached("SELECT truck FROM unit WHERE stale = 1 ORDER BY no")?;
        let rows = query.query_map([], |row| Ok(TruckId::from_bytes(row.get(0)?)))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Every truck that a book has been told of.
    ///
    /// # Errors
    /// As any read.
    pub fn known_units(&self) -> Result<Vec<TruckId>, StoreError> {
        let mut query = self.0.prepare_cached("SELECT truck FROM unit ORDER BY no")?;
        let rows = query.query_map([], |row| Ok(TruckId::from_bytes(row.get(0)?)))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The folded state of one unit, when it is fresh.
    ///
    /// # Errors
    /// As any read.
    pub fn unit_body(&self, truck: TruckId) -> Result<Option<Vec<u8>>, StoreError> {
        let mut query = self
            .0
            .prepare_cached("SELECT body FROM unit WHERE truck = ?1 AND stale = 0 AND body IS NOT NULL")?;
        Ok(query.query_row([truck.bytes()], |row| row.get(0)).optional()?)
    }

    /// The folded state of every unit that has a fresh one, with its truck.
    ///
    /// # Errors
    /// As any read.
    pub fn unit_bodies(&self) -> Result<Vec<(TruckId, Vec<u8>)>, StoreError> {
        let mut query = self.0.prepare_cached(BODIES)?;
        let rows = query.query_map([], |row| Ok((TruckId::from_bytes(row.get(0)?), row.get(1)?)))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Lock-outs that stand, or ended after a moment.
    ///
    /// # Errors
    /// As any read.
    pub fn locks_since(&self, since_ms: i64) -> Result<Vec<LockRow>, StoreError> {
        let mut query = self.0.prepare_cached(LOCKS_SINCE)?;
        let rows = query.query_map([since_ms], |row| {
            Ok(LockRow {
                truck: TruckId::from_bytes(row.get(0)?),
                part: row.get(1)?,
                opened: row.get(2)?,
                since_ms: row.get(3)?,
                ended_ms: row.get(4)?,
            })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// How often the fleet has changed here, and the folded fleet; none when it changed since it was folded.
    ///
    /// # Errors
    /// As any read.
    pub fn fleet_kept(&self) -> Result<(i64, Option<Vec<u8>>), StoreError> {
        let mut query = self.0.prepare_cached("SELECT version, body FROM fleet WHERE one = 1")?;
        let kept = query.query_row([], |row| Ok((row.get(0)?, row.get::<_, Vec<u8>>(1)?))).optional()?;
        Ok(kept.map_or((0, None), |(version, body)| (version, (!body.is_empty()).then_some(body))))
    }

    /// How often the fleet has changed here: another number is another fleet.
    ///
    /// # Errors
    /// As any read.
    pub fn fleet_version(&self) -> Result<i64, StoreError> {
        let mut query =
            self.0.prepare_cached("SELECT coalesce((SELECT version FROM fleet WHERE one = 1), 0)")?;
        Ok(query.query_row([], |row| row.get(0))?)
    }
}

/// The unit's number, given when it is first met.
pub(super) fn no_of(tx: &Transaction<'_>, truck: TruckId) -> Result<i64, StoreError> {
    if let Some(no) = Truth(tx).unit_no(truck)? {
        return Ok(no);
    }
    tx.execute("INSERT INTO unit (truck) VALUES (?1)", [truck.bytes()])?;
    Ok(tx.last_insert_rowid())
}

impl Store {
    /// Keeps the folded state and the lock-outs of units.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_units(&mut self, units: &[(TruckId, Vec<u8>, Vec<LockRow>)]) -> Result<(), StoreError> {
        let tx = self.write()?;
        for (truck, body, locks) in units {
            let no = no_of(&tx, *truck)?;
            tx.prepare_cached("UPDATE unit SET stale = 0, body = ?2 WHERE no = ?1")?.execute((no, body))?;
            tx.prepare_cached("DELETE FROM lock_out WHERE unit = ?1")?.execute([no])?;
            let mut insert = tx.prepare_cached(
                "INSERT OR REPLACE INTO lock_out (unit, part, opened, since, ended) VALUES (?1, ?2, ?3, ?4, ?5)",
            )?;
            for lock in locks {
                insert.execute((no, &lock.part, lock.opened, lock.since_ms, lock.ended_ms))?;
            }
        }
        tx.commit()?;
        Ok(())
    }
}

/// Keeps the folded fleet, unless it changed again.
pub(super) fn put_fleet(tx: &Transaction<'_>, version: i64, body: &[u8]) -> Result<(), StoreError> {
    tx.execute("INSERT OR IGNORE INTO fleet (one, version, body) VALUES (1, 0, x'')", [])?;
    tx.execute("UPDATE fleet SET body = ?2 WHERE one = 1 AND version = ?1", (version, body))?;
    Ok(())
}

/// Drops the folded fleet and counts the change.
pub(super) fn change_fleet(tx: &Transaction<'_>) -> Result<i64, StoreError> {
    let mut query = tx.prepare_cached(
        "INSERT INTO fleet (one, version, body) VALUES (1, 1, x'')
         ON CONFLICT (one) DO UPDATE SET version = version + 1, body = x'' RETURNING version",
    )?;
    Ok(query.query_row([], |row| row.get(0))?)
}

/// Marks one unit, or all of them.
pub(super) fn mark_stale(tx: &Transaction<'_>, truck: Option<TruckId>) -> Result<(), StoreError> {
    match truck {
        Some(truck) => tx
            .prepare_cached("UPDATE unit SET stale = 1 WHERE truck = ?1 AND stale = 0")?
            .execute([truck.bytes()])?,
        None => tx.execute("UPDATE unit SET stale = 1 WHERE stale = 0", [])?,
    };
    Ok(())
}

impl Truth<'_> {
    /// Time of a unit's newest entry up to a moment, milliseconds; 0 when it has none.
    ///
    /// # Errors
    /// As any read.
    pub fn newest_of_unit(&self, truck: TruckId, upto_ms: i64) -> Result<i64, StoreError> {
        let Some(unit) = self.unit_no(truck)? else { return Ok(0) };
        let mut query =
            self.0.prepare_cached("SELECT coalesce(max(at), 0) FROM fact WHERE unit = ?1 AND at <= ?2")?;
        Ok(query.query_row((unit, upto_ms), |row| row.get(0))?)
    }

    /// Who wrote of a unit last on one day of the yard and up to a moment, a signer aside.
    ///
    /// # Errors
    /// As any read.
    pub fn wrote_last_on(
        &self,
        truck: TruckId,
        day: i32,
        upto_ms: i64,
        aside: KeyId,
    ) -> Result<Option<KeyId>, StoreError> {
        let Some(unit) = self.unit_no(truck)? else { return Ok(None) };
        let mut query = self.0.prepare_cached(
            "SELECT e.actor FROM fact f JOIN entry e ON e.n = f.entry
             WHERE f.day = ?1 AND f.unit = ?2 AND f.at <= ?3 AND substr(e.actor, 1, 8) <> ?4
             ORDER BY f.at DESC, e.id DESC LIMIT 1",
        )?;
        let actor = query.query_row((day, unit, upto_ms, aside.0), |row| row.get(0)).optional()?;
        Ok(actor.map(|actor| Actor(actor).key()))
    }
}
