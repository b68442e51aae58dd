//! Drafts: begun, not yet signed. They carry the id their entry will have.

use rusqlite::OptionalExtension;
use sumpbook_trade::EntryId;

use super::{Store, StoreError};

/// A draft as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DraftRow {
    /// The id its entry will have.
    pub id: EntryId,
    /// The draft, JSON.
    pub body: String,
    /// When it was last changed, milliseconds.
    pub changed_ms: i64,
}

impl Store {
    /// Keeps a draft.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_draft(&mut self, draft: &DraftRow) -> Result<(), StoreError> {
        let tx = self.write()?;
        tx.execute(
            "INSERT OR REPLACE INTO draft (id, body, changed) VALUES (?1, ?2, ?3)",
            (draft.id.bytes(), &draft.body, draft.changed_ms),
        )?;
        tx.commit()?;
        Ok(())
    }

    /// One draft.
    ///
    /// # Errors
    /// As any read.
    pub fn draft(&self, id: EntryId) -> Result<Option<DraftRow>, StoreError> {
        let mut query =
            self.connection.prepare_cached("SELECT id, body, changed FROM draft WHERE id = ?1")?;
        Ok(query.query_row([id.bytes()], row).optional()?)
    }

    /// All drafts, oldest change first.
    ///
    /// # Errors
    /// As any read.
    pub fn drafts(&self) -> Result<Vec<DraftRow>, StoreError> {
        let mut query =
            self.connection.prepare_cached("SELECT id, body, changed FROM draft ORDER BY changed, id")?;
        let rows = query.query_map([], row)?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Drops a draft that became an entry, or was given up.
    ///
    /// # Errors
    /// As any write.
    pub fn drop_draft(&mut self, id: EntryId) -> Result<(), StoreError> {
        let tx = self.write()?;
        tx.execute("DELETE FROM draft WHERE id = ?1", [id.bytes()])?;
        tx.commit()?;
        Ok(())
    }
}

fn row(row: &rusqlite::Row<'_>) -> rusqlite::Result<DraftRow> {
    Ok(DraftRow { id: EntryId::from_bytes(row.get(0)?), body: row.get(1)?, changed_ms: row.get(2)? })
}
