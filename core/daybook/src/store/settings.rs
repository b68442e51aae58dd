//! Small things this folder remembers.

use rusqlite::OptionalExtension;

use super::{Store, StoreError};

/// Until when a code holds, milliseconds, and the key id of the device that used it.
pub type InviteState = (i64, Option<Vec<u8>>);

const CALENDAR: &str = "calendar";

impl Store {
    /// A remembered value.
    pub(crate) fn setting(&self, name: &str) -> Result<Option<Vec<u8>>, StoreError> {
        let mut query = self.connection.prepare_cached("SELECT value FROM setting WHERE name = ?1")?;
        Ok(query.query_row([name], |row| row.get(0)).optional()?)
    }

    /// Remembers a value.
    pub(crate) fn set_setting(&mut self, name: &str, value: &[u8]) -> Result<(), StoreError> {
        let tx = self.write()?;
        tx.execute("INSERT OR REPLACE INTO setting (name, value) VALUES (?1, ?2)", (name, value))?;
        tx.commit()?;
        Ok(())
    }

    /// What the feed of due dates last said of each task, as whoever makes it keeps it.
    ///
    /// # Errors
    /// As any read.
    pub fn calendar(&self) -> Result<Option<Vec<u8>>, StoreError> {
        self.setting(CALENDAR)
    }

    /// Keeps what the feed says now.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_calendar(&mut self, said: &[u8]) -> Result<(), StoreError> {
        self.set_setting(CALENDAR, said)
    }

    /// Remembers an invitation's code, so that it can be used once.
    ///
    /// # Errors
    /// As any write.
    pub fn add_invite(&mut self, code: &[u8; 16], made_ms: i64, expires_ms: i64) -> Result<(), StoreError> {
        let tx = self.write()?;
        tx.execute(
            "INSERT INTO invite (code, made, expires) VALUES (?1, ?2, ?3)",
            (code, made_ms, expires_ms),
        )?;
        tx.commit()?;
        Ok(())
    }

    /// Until when a code holds and which device used it, by its key id.
    ///
    /// # Errors
    /// As any read.
    pub fn invite(&self, code: &[u8; 16]) -> Result<Option<InviteState>, StoreError> {
        let mut query =
            self.connection.prepare_cached("SELECT expires, used_by FROM invite WHERE code = ?1")?;
        Ok(query.query_row([code], |row| Ok((row.get(0)?, row.get(1)?))).optional()?)
    }

    /// Notes that a code is used up.
    ///
    /// # Errors
    /// As any write.
    pub fn use_invite(&mut self, code: &[u8; 16], device: &[u8; 8]) -> Result<(), StoreError> {
        let tx = self.write()?;
        tx.execute("UPDATE invite SET used_by = ?2 WHERE code = ?1 AND used_by IS NULL", (code, device))?;
        tx.commit()?;
        Ok(())
    }
}
