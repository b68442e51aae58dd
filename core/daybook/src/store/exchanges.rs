//! Who exchanged when, and what the shop last acknowledged.

use rusqlite::OptionalExtension;

use super::truth::hashes;
use super::{Store, StoreError, Truth};
use crate::book::BookId;
use crate::gate::ChangeHash;

/// One exchange with a device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ExchangeRow {
    /// Key id of the device.
    pub device: [u8; 8],
    /// When, milliseconds, by this side's clock.
    pub at_ms: i64,
    /// Its cursor before.
    pub from_n: i64,
    /// It was told everything up to this number.
    pub to_n: i64,
    /// This side's clock minus the device's, milliseconds.
    pub off_ms: Option<i64>,
}

impl Store {
    /// Writes an exchange into the log.
    ///
    /// # Errors
    /// As any write.
    pub fn log_exchange(&mut self, row: &ExchangeRow) -> Result<(), StoreError> {
        let tx = self.write()?;
        tx.execute(
            "INSERT INTO exchange (device, at, from_n, to_n, off_ms) VALUES (?1, ?2, ?3, ?4, ?5)",
            (row.device, row.at_ms, row.from_n, row.to_n, row.off_ms),
        )?;
        tx.commit()?;
        Ok(())
    }

    /// All exchanges with every device up to a moment, in order.
    ///
    /// # Errors
    /// As any read.
    pub fn exchanges(&self, upto_ms: i64) -> Result<Vec<ExchangeRow>, StoreError> {
        let mut query = self.connection.prepare_cached(
            "SELECT device, at, from_n, to_n, off_ms FROM exchange WHERE at <= ?1 ORDER BY no",
        )?;
        let rows = query.query_map([upto_ms], exchange_row)?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The last exchange of each device up to a moment.
    ///
    /// # Errors
    /// As any read.
    pub fn last_exchanges(&self, upto_ms: i64) -> Result<Vec<ExchangeRow>, StoreError> {
        let mut query = self.connection.prepare_cached(
            // From device to device through the index: the history of each is not gone through.
            "WITH RECURSIVE known (device) AS (
               SELECT min(device) FROM exchange
               UNION ALL
               SELECT (SELECT min(device) FROM exchange WHERE device > k.device) FROM known k
               WHERE k.device IS NOT NULL
             )
             SELECT e.device, e.at, e.from_n, e.to_n, e.off_ms FROM known k JOIN exchange e ON e.no = (
               SELECT no FROM exchange WHERE device = k.device
                 AND at = (SELECT max(at) FROM exchange WHERE device = k.device AND at <= ?1)
               LIMIT 1
             ) WHERE k.device IS NOT NULL ORDER BY e.device",
        )?;
        let rows = query.query_map([upto_ms], exchange_row)?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// How far the clock of a device stood from this side's, milliseconds, at the exchange that brought what came at
    /// this moment; none where none did.
    ///
    /// # Errors
    /// As any read.
    pub fn off_at(&self, device: [u8; 8], received_ms: i64) -> Result<Option<i64>, StoreError> {
        let mut query = self.connection.prepare_cached(
            "SELECT off_ms FROM exchange WHERE device = ?1 AND at >= ?2 ORDER BY at LIMIT 1",
        )?;
        Ok(query.query_row((device, received_ms), |row| row.get(0)).optional()?.flatten())
    }

    /// When a device was first told of entry `n`.
    ///
    /// # Errors
    /// As any read.
    pub fn told_at(&self, device: [u8; 8], n: i64, upto_ms: i64) -> Result<Option<i64>, StoreError> {
        let mut query = self.connection.prepare_cached(
            "SELECT at FROM exchange WHERE device = ?1 AND to_n >= ?2 AND at <= ?3 ORDER BY at LIMIT 1",
        )?;
        Ok(query.query_row((device, n, upto_ms), |row| row.get(0)).optional()?)
    }
}

impl Truth<'_> {
    /// The heads of a book as the shop last acknowledged them, and when by the shop's clock, milliseconds.
    ///
    /// # Errors
    /// As any read.
    pub fn receipt(&self, book: BookId) -> Result<Option<(Vec<ChangeHash>, i64)>, StoreError> {
        let Some(no) = self.book_no(book)? else { return Ok(None) };
        let mut query = self.0.prepare_cached("SELECT heads, at FROM receipt WHERE book = ?1")?;
        let found = query.query_row([no], |row| Ok((row.get::<_, Vec<u8>>(0)?, row.get(1)?))).optional()?;
        Ok(found.map(|(heads, at)| (hashes(&heads), at)))
    }

    /// How many entries are held, in all books.
    ///
    /// # Errors
    /// As any read.
    pub fn count(&self) -> Result<u64, StoreError> {
        let count: i64 = self.0.query_row("SELECT count(*) FROM entry", [], |row| row.get(0))?;
        Ok(count.unsigned_abs())
    }
}

impl Store {
    /// Keeps the shop's heads of books that are held here. An older receipt gives way to a newer one;
    /// with `turned_back` any gives way, because the shop began again from a copy.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_receipts(
        &mut self,
        heads: &[(BookId, Vec<ChangeHash>)],
        at_ms: i64,
        turned_back: bool,
    ) -> Result<(), StoreError> {
        let tx = self.write()?;
        for (book, heads) in heads {
            let Some(no) = Truth(&tx).book_no(*book)? else { continue };
            let bytes: Vec<u8> = heads.iter().flat_map(|head| head.0).collect();
            tx.prepare_cached(
                "INSERT INTO receipt (book, heads, at) VALUES (?1, ?2, ?3)
                 ON CONFLICT (book) DO UPDATE SET heads = ?2, at = ?3 WHERE ?4 OR at <= ?3",
            )?
            .execute((no, bytes, at_ms, turned_back))?;
        }
        tx.commit()?;
        Ok(())
    }
}

#[cfg(test)]
impl Store {
    /// As if no receipt had ever come.
    pub(crate) fn forget_receipts(&mut self) -> Result<(), StoreError> {
        self.connection.execute("DELETE FROM receipt", [])?;
        Ok(())
    }
}

fn exchange_row(row: &rusqlite::Row<'_>) -> rusqlite::Result<ExchangeRow> {
    Ok(ExchangeRow {
        device: row.get(0)?,
        at_ms: row.get(1)?,
        from_n: row.get(2)?,
        to_n: row.get(3)?,
        off_ms: row.get(4)?,
    })
}

impl super::Truth<'_> {
    /// When the shop's newest receipt was taken in, milliseconds; none before the first.
    ///
    /// # Errors
    /// As any read.
    pub fn last_receipt_ms(&self) -> Result<Option<i64>, StoreError> {
        Ok(self.0.query_row("SELECT max(at) FROM receipt", [], |row| row.get(0))?)
    }

    /// How many entries were written in this folder.
    ///
    /// # Errors
    /// As any read.
    pub fn written_here(&self) -> Result<u64, StoreError> {
        let count: i64 =
            self.0.query_row("SELECT count(*) FROM entry WHERE carrier IS NULL", [], |row| row.get(0))?;
        Ok(count.unsigned_abs())
    }
}
