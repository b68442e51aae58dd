//! A copy of the whole file, taken while others write.

use std::path::Path;
use std::time::Duration;

use rusqlite::Connection;
use rusqlite::backup::{Backup, StepResult};

use super::{Store, StoreError};

/// Pages at a time.
const PAGES: i32 = 1_024;
/// Waits for a lock that somebody holds for a moment.
const PAUSE: Duration = Duration::from_millis(20);
/// So many waits, then it is told that another program is in the way.
const PAUSES: u32 = 250;

impl Store {
    /// Copies everything in this folder's file into a new one, by SQLite's own way for it. One reading transaction
    /// is held meanwhile: the copy is of one moment, and nobody who writes waits for it. The copy is looked
    /// through, page by page, and on the disk when this returns. Returns the number of its last entry.
    ///
    /// # Errors
    /// When a file stands there already, cannot be written, or the copy does not hold what it should.
    pub fn copy_to(&self, path: &Path) -> Result<i64, StoreError> {
        if path.exists() {
            let reason = std::io::Error::from(std::io::ErrorKind::AlreadyExists);
            return Err(StoreError::Folder { path: path.to_owned(), reason });
        }
        let holds_already = !self.connection.is_autocommit();
        if !holds_already {
            self.connection.execute_batch("BEGIN")?;
        }
        let copied = self.copied(path);
        if !holds_already {
            self.connection.execute_batch("COMMIT")?;
        }
        copied.map_err(|e| e.at(path))
    }

    fn copied(&self, path: &Path) -> Result<i64, StoreError> {
        // The first question of a transaction is what fixes its moment.
        let last = self.truth().last_n()?;
        let mut copy = Connection::open(path)?;
        {
            let backup = Backup::new(&self.connection, &mut copy)?;
            let mut pauses = 0;
            loop {
                match backup.step(PAGES)? {
                    StepResult::Done => break,
                    StepResult::More => {}
                    _ if pauses < PAUSES => {
                        pauses += 1;
                        std::thread::sleep(PAUSE);
                    }
                    _ => return Err(StoreError::Busy),
                }
            }
        }
        let store = Store { connection: copy, path: path.to_owned() };
        store.check()?;
        if store.truth().last_n()? != last {
            return Err(StoreError::Unexpected("a copy that ends elsewhere"));
        }
        // One file and no log beside it, so that it can be carried.
        store.connection.query_row("PRAGMA journal_mode = DELETE", [], |_| Ok(()))?;
        drop(store);
        let synced = std::fs::File::open(path).and_then(|file| file.sync_all());
        synced.map_err(|reason| StoreError::Folder { path: path.to_owned(), reason })?;
        Ok(last)
    }
}
