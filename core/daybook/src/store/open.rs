//! Opening the folder.

use std::io::Read;
use std::path::{Path, PathBuf};

use rusqlite::{Connection, OpenFlags};

use super::{Salvaged, StoreError, Transaction, schema};

/// The file's name within its folder.
const FILE: &str = "book.db";

/// Ending of the empty file that stands beside it from when something could not be read to the next opening.
const SUSPECT: &str = "suspect";

/// One folder's book, open for reading and writing.
#[derive(Debug)]
pub struct Store {
    pub(super) connection: Connection,
    pub(super) path: PathBuf,
}

/// What opening found.
#[derive(Debug)]
pub struct Opened {
    /// The store.
    pub store: Store,
    /// What was saved out of a damaged file; none when all was well.
    pub salvaged: Option<Salvaged>,
}

impl Store {
    /// Opens the book in `folder`, making both when they are not there.
    ///
    /// A damaged file is set beside the new one under a name of its own, never deleted, and everything
    /// readable in it is taken over.
    ///
    /// # Errors
    /// A newer version's file, a folder that cannot be written, a full disk.
    pub fn open(folder: &Path) -> Result<Opened, StoreError> {
        std::fs::create_dir_all(folder)
            .map_err(|reason| StoreError::Folder { path: folder.to_owned(), reason })?;
        let path = folder.join(FILE);
        let suspect = path.with_extension(SUSPECT);
        let is_suspect = suspect.exists();
        let opened = Store::open_file(&path).and_then(|store| {
            // Something could not be read last time: now every page is looked at.
            if is_suspect {
                store.check()?;
            }
            Ok(store)
        });
        // Whatever this opening finds, the next one need not look again.
        if is_suspect {
            let _ = std::fs::remove_file(&suspect);
        }
        match opened {
            Ok(store) => Ok(Opened { store, salvaged: None }),
            Err(StoreError::Damaged(_)) => {
                let (store, salvaged) = super::salvage::salvage(&path)?;
                Ok(Opened { store, salvaged: Some(salvaged) })
            }
            Err(other) => Err(other.at(&path)),
        }
    }

    pub(super) fn open_file(path: &Path) -> Result<Store, StoreError> {
        let mut connection = Connection::open(path).map_err(|e| StoreError::from(e).at(path))?;
        looks_whole(path)?;
        // Before anything is set: a newer version's file is not touched at all.
        let form = schema::known_form(&connection).map_err(|e| e.at(path))?;
        schema::prepare(&connection).map_err(|e| e.at(path))?;
        if form < schema::newest() {
            schema::upgrade(&mut connection).map_err(|e| e.at(path))?;
        }
        let store = Store { connection, path: path.to_owned() };
        store.touch_first_pages().map_err(|e| e.at(path))?;
        Ok(store)
    }

    /// A book in memory, for reading the shop's knowledge of another moment.
    ///
    /// # Errors
    /// When memory runs out.
    pub fn in_memory() -> Result<Store, StoreError> {
        let mut connection = Connection::open_in_memory()?;
        connection.set_prepared_statement_cache_capacity(64);
        schema::upgrade(&mut connection)?;
        Ok(Store { connection, path: PathBuf::new() })
    }

    /// A second connection that only reads.
    ///
    /// # Errors
    /// When the file cannot be read.
    pub fn reader(folder: &Path) -> Result<Store, StoreError> {
        let path = folder.join(FILE);
        let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX;
        let open = |name: &Path| {
            let connection = Connection::open_with_flags(name, flags | OpenFlags::SQLITE_OPEN_URI)?;
            connection.busy_timeout(std::time::Duration::from_secs(5))?;
            connection.set_prepared_statement_cache_capacity(64);
            connection.query_row("SELECT count(*) FROM sqlite_master", [], |_| Ok(()))?;
            Ok(connection)
        };
        let connection = match open(&path).map_err(|e: rusqlite::Error| StoreError::from(e)) {
            // Readers of a write-ahead log share a file beside it. Where none can be made nobody writes either.
            Err(StoreError::ReadOnly(_)) => open(&unchanging(&path)).map_err(StoreError::from),
            opened => opened,
        };
        Ok(Store { connection: connection.map_err(|e| e.at(&path))?, path })
    }

    /// Begins reading: whatever is asked from here on is of one moment, however much is written meanwhile.
    ///
    /// # Errors
    /// As any read.
    pub fn hold_still(&self) -> Result<(), StoreError> {
        Ok(self.connection.execute_batch("BEGIN")?)
    }

    /// Keeps up to so many KiB of the file in memory, for whoever answers many: what SQLite keeps by itself is
    /// a phone's measure.
    ///
    /// # Errors
    /// When SQLite does not take it.
    pub fn keep_in_memory(&self, kib: u32) -> Result<(), StoreError> {
        // Negative: KiB, and not pages.
        Ok(self.connection.pragma_update(None, "cache_size", -i64::from(kib))?)
    }

    /// Whether `folder` holds a book.
    pub fn exists(folder: &Path) -> bool {
        folder.join(FILE).exists()
    }

    /// The file.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Begins a writing transaction, or within one a part of it.
    pub(super) fn write(&mut self) -> Result<Transaction<'_>, StoreError> {
        Transaction::begin(&self.connection).map_err(|e| e.at(&self.path))
    }

    /// Asks SQLite to go through every page.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] when a page does not hold what it should.
    pub fn check(&self) -> Result<(), StoreError> {
        let asked = self.connection.query_row("PRAGMA integrity_check(1)", [], |row| row.get::<_, String>(0));
        let said = match asked.map_err(StoreError::from) {
            Err(StoreError::Damaged(_)) => "damaged".to_owned(),
            said => said?,
        };
        if said == "ok" {
            return Ok(());
        }
        self.suspect();
        Err(StoreError::Damaged(self.path.clone()))
    }

    /// Notes that something could not be read, so that the next opening looks at every page and saves what
    /// is readable. Noted once; a folder that cannot be written keeps no note.
    pub(crate) fn suspect(&self) {
        if !self.path.as_os_str().is_empty() {
            let _ = std::fs::File::create(self.path.with_extension(SUSPECT));
        }
    }

    /// As [`Store::suspect`], of a folder whose store is closed.
    pub(crate) fn suspect_in(folder: &Path) {
        let _ = std::fs::File::create(folder.join(FILE).with_extension(SUSPECT));
    }

    /// Reads where a damaged file usually shows it first; costs the same however long the history is.
    fn touch_first_pages(&self) -> Result<(), StoreError> {
        let mut query = self.connection.prepare_cached(
            "SELECT length(payload) + length(sig) FROM entry
             WHERE n IN ((SELECT max(n) FROM entry), (SELECT min(n) FROM entry))
             UNION ALL SELECT judged FROM fact WHERE entry = (SELECT max(entry) FROM fact)",
        )?;
        let mut rows = query.query([])?;
        while let Some(row) = rows.next()? {
            row.get::<_, i64>(0)?;
        }
        Ok(())
    }
}

/// The file's name for SQLite when nobody can be writing it.
fn unchanging(path: &Path) -> PathBuf {
    let name = path.to_string_lossy().replace('%', "%25").replace('?', "%3f").replace('#', "%23");
    PathBuf::from(format!("file:{name}?immutable=1"))
}

/// A file shorter than its header says was cut off; SQLite itself would notice only on the missing page.
/// Beside a log the header is not yet what it will be, so nothing is said then.
fn looks_whole(path: &Path) -> Result<(), StoreError> {
    let log = path.with_extension("db-wal");
    if std::fs::metadata(&log).is_ok_and(|m| m.len() > 0) {
        return Ok(());
    }
    match promised(path) {
        Some((needed, length)) if length < needed => Err(StoreError::Damaged(path.to_owned())),
        _ => Ok(()),
    }
}

/// Bytes the header promises and bytes the file has. SQLite file format, 1.3: the page size stands at byte 16
/// (1 means 65,536), the page count at byte 28, big-endian.
fn promised(path: &Path) -> Option<(u64, u64)> {
    let mut file = std::fs::File::open(path).ok()?;
    let mut header = [0; 32];
    file.read_exact(&mut header).ok()?;
    let [.., s0, s1, _, _, _, _, _, _, _, _, _, _, c0, c1, c2, c3] = header;
    let size = match u16::from_be_bytes([s0, s1]) {
        1 => 65_536,
        size => u64::from(size),
    };
    let pages = u64::from(u32::from_be_bytes([c0, c1, c2, c3]));
    Some((size.saturating_mul(pages), file.metadata().ok()?.len()))
}
