//! Who is in at the shop's console, so that a restart of the hub signs nobody out. What a cookie says is never kept,
//! only its hash.

use super::{Store, StoreError};

/// An open session.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SessionRow {
    /// SHA-256 of what its cookie says.
    pub hash: [u8; 32],
    /// Whose.
    pub name: String,
    /// The mark of their password when it was opened.
    pub mark: [u8; 8],
    /// When it ends, milliseconds.
    pub ends_ms: i64,
}

impl Store {
    /// Keeps a session; those that are over are dropped, and beyond `most` those that end first.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_session(&mut self, row: &SessionRow, most: usize, now_ms: i64) -> Result<(), StoreError> {
        let tx = self.write()?;
        tx.execute("DELETE FROM session WHERE ends <= ?1", [now_ms])?;
        tx.execute(
            "INSERT OR REPLACE INTO session (hash, name, mark, ends) VALUES (?1, ?2, ?3, ?4)",
            (row.hash, &row.name, row.mark, row.ends_ms),
        )?;
        let most = i64::try_from(most).unwrap_or(i64::MAX);
        tx.execute(
            "DELETE FROM session WHERE hash NOT IN (SELECT hash FROM session ORDER BY ends DESC LIMIT ?1)",
            [most],
        )?;
        tx.commit()?;
        Ok(())
    }

    /// Ends a session.
    ///
    /// # Errors
    /// As any write.
    pub fn end_session(&mut self, hash: &[u8; 32]) -> Result<(), StoreError> {
        let tx = self.write()?;
        tx.execute("DELETE FROM session WHERE hash = ?1", [hash])?;
        tx.commit()?;
        Ok(())
    }

    /// The sessions that are open at a moment.
    ///
    /// # Errors
    /// As any read.
    pub fn sessions(&self, now_ms: i64) -> Result<Vec<SessionRow>, StoreError> {
        let mut query = self
            .connection
            .prepare_cached("SELECT hash, name, mark, ends FROM session WHERE ends > ?1 ORDER BY ends")?;
        let rows = query.query_map([now_ms], |row| {
            Ok(SessionRow { hash: row.get(0)?, name: row.get(1)?, mark: row.get(2)?, ends_ms: row.get(3)? })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }
}
