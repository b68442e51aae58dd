//! Saving what is readable out of a damaged file. The file itself is kept.

use std::collections::HashMap;
use std::path::{Path, PathBuf};

use rusqlite::{Connection, OpenFlags};

use super::{Store, StoreError};

/// What was saved.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Salvaged {
    /// Where the damaged file is kept.
    pub kept: PathBuf,
    /// Entries the file says it held, as far as that can be read.
    pub held: i64,
    /// Entries that could be read and were taken over.
    pub saved: i64,
}

/// Columns of every table whose rows are not rebuilt from others, in the order of [`copy`].
const TABLES: [(&str, &str, &str); 12] = [
    ("book", "no", "no, truck, year"),
    // The same out of its index, should the table itself be gone.
    ("book", "truck, year", "no, truck, year"),
    ("entry", "n", "n, hash, book, actor, seq, deps, op, id, payload, sig, received, carrier"),
    ("refused", "no", "no, bytes, reason, device, id, received"),
    ("waiting", "no", "no, part, missing, device, received"),
    ("exchange", "no", "no, device, at, from_n, to_n, off_ms"),
    ("receipt", "book", "book, heads, at"),
    ("setting", "name", "name, value"),
    ("draft", "id", "id, body, changed"),
    ("invite", "code", "code, made, expires, used_by"),
    ("sheet", "day, version", "day, version, at, n, heads, body, changes"),
    ("photo_sent", "photo", "photo, size, reached, there"),
];

/// Sets the damaged file aside and builds a new one from what can be read of it.
pub(super) fn salvage(path: &Path) -> Result<(Store, Salvaged), StoreError> {
    let kept = free_name(path);
    let moved = |from: &Path, to: &Path| {
        std::fs::rename(from, to).map_err(|reason| StoreError::Folder { path: from.to_owned(), reason })
    };
    moved(path, &kept)?;
    for tail in ["-wal", "-shm"] {
        let side = with_tail(path, tail);
        if side.exists() {
            moved(&side, &with_tail(&kept, tail))?;
        }
    }
    let mut store = Store::open_file(path)?;
    // Read-write, so that SQLite can take in what stands in the write-ahead log; its bytes stay as they are
    // otherwise. A file it cannot open at all simply yields nothing.
    let copy_of = kept.with_extension("reading");
    let damaged = std::fs::copy(&kept, &copy_of).ok().and_then(|_| {
        let _ = std::fs::copy(with_tail(&kept, "-wal"), with_tail(&copy_of, "-wal"));
        let connection = Connection::open_with_flags(&copy_of, OpenFlags::SQLITE_OPEN_READ_WRITE).ok()?;
        // Without this SQLite reads nothing of a file that is shorter than its header says.
        connection.execute_batch("PRAGMA writable_schema = ON").ok()?;
        Some(connection)
    });
    let mut salvaged = Salvaged { kept, held: 0, saved: 0 };
    if let Some(damaged) = damaged {
        salvaged.held = damaged
            .query_row("SELECT seq FROM sqlite_sequence WHERE name = 'entry'", [], |row| row.get(0))
            .unwrap_or(0);
        let tx = store.write()?;
        // Rows whose book could not be read have no place to go.
        tx.execute_batch("PRAGMA defer_foreign_keys = ON")?;
        for (table, order, columns) in TABLES {
            copy(&damaged, &tx, table, order, columns)?;
        }
        name_lost_predecessors(&damaged, &tx)?;
        tx.execute("DELETE FROM entry WHERE book NOT IN (SELECT no FROM book)", [])?;
        tx.execute("DELETE FROM receipt WHERE book NOT IN (SELECT no FROM book)", [])?;
        salvaged.saved = tx.query_row("SELECT count(*) FROM entry", [], |row| row.get(0))?;
        tx.commit()?;
    }
    for tail in ["", "-wal", "-shm"] {
        let _ = std::fs::remove_file(with_tail(&copy_of, tail));
    }
    Ok((store, salvaged))
}

/// Copies what can be read of a table: from its beginning until it breaks, then from its end.
fn copy(
    damaged: &Connection,
    tx: &super::Transaction<'_>,
    table: &str,
    order: &str,
    columns: &str,
) -> Result<(), StoreError> {
    let count = columns.split(", ").count();
    let marks: Vec<String> = (1..=count).map(|i| format!("?{i}")).collect();
    let insert = format!("INSERT OR IGNORE INTO {table} ({columns}) VALUES ({})", marks.join(", "));
    for direction in ["ASC", "DESC"] {
        let order: Vec<String> = order.split(", ").map(|column| format!("{column} {direction}")).collect();
        let select = format!("SELECT {columns} FROM {table} ORDER BY {}", order.join(", "));
        let Ok(mut query) = damaged.prepare(&select) else { continue };
        let Ok(mut rows) = query.query([]) else { continue };
        while let Ok(Some(row)) = rows.next() {
            let cells: Result<Vec<rusqlite::types::Value>, _> = (0..count).map(|i| row.get(i)).collect();
            // A row that cannot be read, or not be written, is one that was not saved.
            if let Ok(cells) = cells {
                let _ = tx.prepare_cached(&insert)?.execute(rusqlite::params_from_iter(cells));
            }
        }
    }
    Ok(())
}

/// A row whose only predecessor stood in the row before keeps no hash of its own: where that row is lost, its
/// hash is taken from the indexes. Where it is not there either, the row will not be placed.
fn name_lost_predecessors(damaged: &Connection, tx: &super::Transaction<'_>) -> Result<(), StoreError> {
    let mut orphans = tx.prepare(
        "SELECT n, book, actor, seq - 1 FROM entry e WHERE deps IS NULL AND seq > 1 AND NOT EXISTS
         (SELECT 1 FROM entry p WHERE p.book = e.book AND p.actor = e.actor AND p.seq = e.seq - 1)",
    )?;
    let orphans = orphans.query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?)))?;
    let orphans: Vec<(i64, i64, [u8; 16], i64)> = orphans.collect::<Result<_, _>>()?;
    if orphans.is_empty() {
        return Ok(());
    }
    let mut hashes: HashMap<i64, [u8; 32]> = HashMap::new();
    for direction in ["ASC", "DESC"] {
        // Both columns stand in the index of hashes, so the table is not read.
        let select = format!("SELECT n, hash FROM entry ORDER BY hash {direction}");
        let Ok(mut query) = damaged.prepare(&select) else { continue };
        let Ok(mut rows) = query.query([]) else { continue };
        while let Ok(Some(row)) = rows.next() {
            if let (Ok(n), Ok(hash)) = (row.get(0), row.get(1)) {
                hashes.insert(n, hash);
            }
        }
    }
    for (n, book, actor, seq) in orphans {
        let lost: Option<i64> = damaged
            .query_row(
                "SELECT n FROM entry WHERE book = ?1 AND actor = ?2 AND seq = ?3",
                (book, actor, seq),
                |row| row.get(0),
            )
            .ok();
        if let Some(hash) = lost.and_then(|lost| hashes.get(&lost)) {
            tx.execute("UPDATE entry SET deps = ?2 WHERE n = ?1", (n, hash))?;
        }
    }
    Ok(())
}

fn with_tail(path: &Path, tail: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(tail);
    PathBuf::from(name)
}

/// The first name beside the file that nothing has yet.
fn free_name(path: &Path) -> PathBuf {
    (1u32..)
        .map(|number| path.with_extension(format!("damaged-{number}.db")))
        .find(|name| !name.exists())
        .unwrap_or_else(|| path.with_extension("damaged.db"))
}
