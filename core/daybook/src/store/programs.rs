//! Which version of the program each device runs, as it said itself.

use super::{Store, StoreError};

/// What a device said of its program.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ProgramRow {
    /// Key id of the device.
    pub device: [u8; 8],
    /// The version, in its words.
    pub version: String,
    /// When this side first heard of it, milliseconds.
    pub since_ms: i64,
}

impl Store {
    /// Keeps the version a device says it runs; said again it changes nothing.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_program(&mut self, device: [u8; 8], version: &str, now_ms: i64) -> Result<(), StoreError> {
        let tx = self.write()?;
        tx.prepare_cached(
            "INSERT INTO program (device, version, since) VALUES (?1, ?2, ?3)
             ON CONFLICT (device) DO UPDATE SET version = ?2, since = ?3 WHERE version <> ?2",
        )?
        .execute((device, version, now_ms))?;
        tx.commit()?;
        Ok(())
    }

    /// What every device said of its program.
    ///
    /// # Errors
    /// As any read.
    pub fn programs(&self) -> Result<Vec<ProgramRow>, StoreError> {
        let mut query =
            self.connection.prepare_cached("SELECT device, version, since FROM program ORDER BY device")?;
        let rows = query.query_map([], |row| {
            Ok(ProgramRow { device: row.get(0)?, version: row.get(1)?, since_ms: row.get(2)? })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }
}
