//! Closed day sheets, as they were answered.

use rusqlite::OptionalExtension;

use super::{Store, StoreError};

/// One version of one day's sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetRow {
    /// The yard's day, `2026-10-19`.
    pub day: String,
    /// 1 at the first closing.
    pub version: u32,
    /// As known at, milliseconds.
    pub at_ms: i64,
    /// The shop had entries up to this number.
    pub n: i64,
    /// Digest over all heads then.
    pub heads: [u8; 32],
    /// The answer, JSON, byte for byte.
    pub body: Vec<u8>,
    /// What changed since the version before, one line each.
    pub changes: Vec<String>,
}

impl Store {
    /// Keeps a closed sheet.
    ///
    /// # Errors
    /// As any write; a version that is there already is refused.
    pub fn keep_sheet(&mut self, sheet: &SheetRow) -> Result<(), StoreError> {
        let tx = self.write()?;
        tx.execute(
            "INSERT INTO sheet (day, version, at, n, heads, body, changes) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
            (&sheet.day, sheet.version, sheet.at_ms, sheet.n, sheet.heads, &sheet.body, sheet.changes.join("\n")),
        )?;
        tx.commit()?;
        Ok(())
    }

    /// The newest version of a day's sheet.
    ///
    /// # Errors
    /// As any read.
    pub fn newest_sheet(&self, day: &str) -> Result<Option<SheetRow>, StoreError> {
        let mut query = self.connection.prepare_cached(
            "SELECT day, version, at, n, heads, body, changes FROM sheet WHERE day = ?1 ORDER BY version DESC LIMIT 1",
        )?;
        Ok(query.query_row([day], sheet_row).optional()?)
    }

    /// Every version of one day's sheet, oldest first.
    ///
    /// # Errors
    /// As any read.
    pub fn sheets_of(&self, day: &str) -> Result<Vec<SheetRow>, StoreError> {
        let mut query = self.connection.prepare_cached(
            "SELECT day, version, at, n, heads, body, changes FROM sheet WHERE day = ?1 ORDER BY version",
        )?;
        let rows = query.query_map([day], sheet_row)?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The newest closing of each day: the day, the moment in milliseconds, and up to which number the shop had
    /// entries then.
    ///
    /// # Errors
    /// As any read.
    pub fn newest_closings(&self) -> Result<Vec<(String, i64, i64)>, StoreError> {
        let mut query = self
            .connection
            .prepare_cached("SELECT day, at, n, max(version) FROM sheet GROUP BY day ORDER BY day")?;
        let rows = query.query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Every closed sheet, by day and version.
    ///
    /// # Errors
    /// As any read.
    pub fn sheets(&self) -> Result<Vec<SheetRow>, StoreError> {
        let mut query = self.connection.prepare_cached(
            "SELECT day, version, at, n, heads, body, changes FROM sheet ORDER BY day, version",
        )?;
        let rows = query.query_map([], sheet_row)?;
        Ok(rows.collect::<Result<_, _>>()?)
    }
}

fn sheet_row(row: &rusqlite::Row<'_>) -> rusqlite::Result<SheetRow> {
    let changes: String = row.get(6)?;
    Ok(SheetRow {
        day: row.get(0)?,
        version: row.get(1)?,
        at_ms: row.get(2)?,
        n: row.get(3)?,
        heads: row.get(4)?,
        body: row.get(5)?,
        changes: changes.lines().map(str::to_owned).collect(),
    })
}
