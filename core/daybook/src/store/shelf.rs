//! What is kept outside the books: refused for good, or waiting for something.

use super::{Store, StoreError};

/// The most the waiting shelf holds, in bytes; the oldest gives way.
const SHELF_BYTES: i64 = 8 * 1024 * 1024;

/// The most that refused parts take, in bytes; the oldest gives way, so that nobody fills the disk with junk.
const REFUSED_BYTES: i64 = 32 * 1024 * 1024;

/// A part for the waiting shelf: its bytes, what is missing, key id of whoever signed or brought it.
pub type WaitingPart = (Vec<u8>, [u8; 8], Option<[u8; 8]>);

/// Something that was not admitted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RefusedRow {
    /// The part as it came.
    pub bytes: Vec<u8>,
    /// Why, in a word of ours.
    pub reason: String,
    /// Key id of whoever signed it, when known.
    pub device: Option<[u8; 8]>,
    /// The entry's id, when it could be read.
    pub id: Option<[u8; 16]>,
    /// When it came, milliseconds.
    pub received_ms: i64,
}

/// Something that waits for an earlier part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WaitingRow {
    /// Its number on the shelf.
    pub no: i64,
    /// The entry with its place.
    pub part: Vec<u8>,
    /// What is missing: the first 8 bytes of a change's hash, or a signer's key id.
    pub missing: [u8; 8],
    /// Key id of whoever signed it.
    pub device: Option<[u8; 8]>,
}

impl Store {
    /// Keeps what was refused. The same part with the same reason is kept once.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_refused(&mut self, rows: &[RefusedRow]) -> Result<(), StoreError> {
        if rows.is_empty() {
            return Ok(());
        }
        let tx = self.write()?;
        for row in rows {
            tx.execute(
                "INSERT OR IGNORE INTO refused (bytes, reason, device, id, received) VALUES (?1, ?2, ?3, ?4, ?5)",
                (&row.bytes, &row.reason, row.device, row.id, row.received_ms),
            )?;
        }
        keep_within(&tx, "refused", "bytes", REFUSED_BYTES)?;
        tx.commit()?;
        Ok(())
    }

    /// Everything refused, oldest first.
    ///
    /// # Errors
    /// As any read.
    pub fn refused(&self) -> Result<Vec<RefusedRow>, StoreError> {
        let mut query = self
            .connection
            .prepare_cached("SELECT bytes, reason, device, id, received FROM refused ORDER BY no")?;
        let rows = query.query_map([], |row| {
            Ok(RefusedRow {
                bytes: row.get(0)?,
                reason: row.get(1)?,
                device: row.get(2)?,
                id: row.get(3)?,
                received_ms: row.get(4)?,
            })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Puts a part on the waiting shelf, once.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_waiting(&mut self, parts: &[WaitingPart], received_ms: i64) -> Result<(), StoreError> {
        if parts.is_empty() {
            return Ok(());
        }
        let tx = self.write()?;
        for (part, missing, device) in parts {
            tx.execute(
                "INSERT OR IGNORE INTO waiting (part, missing, device, received) VALUES (?1, ?2, ?3, ?4)",
                (part, missing, device, received_ms),
            )?;
        }
        keep_within(&tx, "waiting", "part", SHELF_BYTES)?;
        tx.commit()?;
        Ok(())
    }

    /// Puts others in the place of one part, in one transaction: what is left of it after some came in.
    ///
    /// # Errors
    /// As any write.
    pub fn replace_waiting(
        &mut self,
        no: i64,
        parts: &[WaitingPart],
        received_ms: i64,
    ) -> Result<(), StoreError> {
        let tx = self.write()?;
        tx.execute("DELETE FROM waiting WHERE no = ?1", [no])?;
        for (part, missing, device) in parts {
            tx.execute(
                "INSERT OR IGNORE INTO waiting (part, missing, device, received) VALUES (?1, ?2, ?3, ?4)",
                (part, missing, device, received_ms),
            )?;
        }
        keep_within(&tx, "waiting", "part", SHELF_BYTES)?;
        tx.commit()?;
        Ok(())
    }

    /// The waiting shelf, oldest first.
    ///
    /// # Errors
    /// As any read.
    pub fn waiting(&self) -> Result<Vec<WaitingRow>, StoreError> {
        let mut query =
            self.connection.prepare_cached("SELECT no, part, missing, device FROM waiting ORDER BY no")?;
        let rows = query.query_map([], |row| {
            Ok(WaitingRow { no: row.get(0)?, part: row.get(1)?, missing: row.get(2)?, device: row.get(3)? })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Takes parts off the shelf.
    ///
    /// # Errors
    /// As any write.
    pub fn drop_waiting(&mut self, numbers: &[i64]) -> Result<(), StoreError> {
        if numbers.is_empty() {
            return Ok(());
        }
        let tx = self.write()?;
        for no in numbers {
            tx.execute("DELETE FROM waiting WHERE no = ?1", [no])?;
        }
        tx.commit()?;
        Ok(())
    }
}

/// Lets the oldest rows go until the table is within its bound. Table and column are names of ours.
fn keep_within(tx: &super::Transaction<'_>, table: &str, column: &str, most: i64) -> Result<(), StoreError> {
    let sum = format!("SELECT coalesce(sum(length({column})), 0) FROM {table}");
    while tx.query_row(&sum, [], |row| row.get::<_, i64>(0))? > most {
        tx.execute(&format!("DELETE FROM {table} WHERE no = (SELECT min(no) FROM {table})"), [])?;
    }
    Ok(())
}
