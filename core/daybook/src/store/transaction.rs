//! A writing transaction, or within one that is open already a savepoint of it.
//!
//! A hub answers many parcels after one commit: each parcel's writes must be able to go back alone, and the code
//! that writes them need not know whether it stands alone.

use std::ops::Deref;

use rusqlite::Connection;

use super::{Store, StoreError};

/// Every write's transaction. Dropped without [`Transaction::commit`], nothing of it happened.
pub(super) struct Transaction<'c> {
    connection: &'c Connection,
    within: bool,
    open: bool,
}

impl<'c> Transaction<'c> {
    /// Begins: the writer's lock is taken at once, so what is read inside stays true.
    pub(super) fn begin(connection: &'c Connection) -> Result<Transaction<'c>, StoreError> {
        let within = !connection.is_autocommit();
        connection.prepare_cached(if within { "SAVEPOINT part" } else { "BEGIN IMMEDIATE" })?.execute([])?;
        Ok(Transaction { connection, within, open: true })
    }

    /// Makes it durable; within another, part of it.
    pub(super) fn commit(mut self) -> Result<(), StoreError> {
        // A COMMIT that failed can leave the transaction open: it is rolled back when this is dropped.
        self.connection.prepare_cached(if self.within { "RELEASE part" } else { "COMMIT" })?.execute([])?;
        self.open = false;
        Ok(())
    }
}

impl Deref for Transaction<'_> {
    type Target = Connection;

    fn deref(&self) -> &Connection {
        self.connection
    }
}

impl Drop for Transaction<'_> {
    fn drop(&mut self) {
        // A full disk makes SQLite roll everything back by itself: then none is open any more.
        if self.open && !self.connection.is_autocommit() {
            let back = if self.within { "ROLLBACK TO part; RELEASE part" } else { "ROLLBACK" };
            let _ = self.connection.execute_batch(back);
        }
    }
}

/// Reading of one moment; over when dropped.
#[derive(Debug)]
pub struct Still<'s>(Option<&'s Connection>);

impl Drop for Still<'_> {
    fn drop(&mut self) {
        if let Some(connection) = self.0 {
            // Nothing was written in it: there is nothing that could go wrong.
            let _ = connection.prepare_cached("COMMIT").and_then(|mut end| end.execute([]));
        }
    }
}

impl Store {
    /// Everything asked until the answer is dropped is of one moment, and the file is locked once and not for each
    /// question. Only for reading: within something that is open already it is that.
    ///
    /// # Errors
    /// As any read.
    pub fn still(&self) -> Result<Still<'_>, StoreError> {
        if !self.connection.is_autocommit() {
            return Ok(Still(None));
        }
        self.connection.prepare_cached("BEGIN")?.execute([])?;
        Ok(Still(Some(&self.connection)))
    }

    /// Begins a transaction that outlasts this call: every write until [`Store::end_all`] becomes part of it.
    /// Within another, a savepoint of it.
    pub(crate) fn begin_all(&mut self) -> Result<bool, StoreError> {
        let mut begun = Transaction::begin(&self.connection).map_err(|e| e.at(self.path()))?;
        begun.open = false;
        Ok(begun.within)
    }

    /// Ends what [`Store::begin_all`] began, which said whether it stands `within` another.
    ///
    /// # Errors
    /// When it could not be made durable, or had gone back already because an error made SQLite do so.
    pub(crate) fn end_all(&mut self, within: bool, keep: bool) -> Result<(), StoreError> {
        if self.connection.is_autocommit() {
            let gone = "the transaction had ended before its end";
            return if keep { Err(StoreError::Unexpected(gone)) } else { Ok(()) };
        }
        let whole = Transaction { connection: &self.connection, within, open: true };
        if keep { whole.commit() } else { Ok(()) }
    }
}

#[cfg(test)]
mod tests {
    use crate::store::{Store, StoreError};

    fn names(store: &Store) -> Vec<String> {
        let mut query = store.connection.prepare("SELECT name FROM setting ORDER BY name").unwrap();
        query.query_map([], |row| row.get(0)).unwrap().map(Result::unwrap).collect()
    }

    #[test]
    fn what_is_asked_within_one_moment_is_of_that_moment() {
        let folder = tempfile::tempdir().unwrap();
        let reads = Store::open(folder.path()).unwrap().store;
        let mut writes = Store::open(folder.path()).unwrap().store;
        writes.set_setting("a", b"1").unwrap();
        let still = reads.still().unwrap();
        assert_eq!(names(&reads), ["a"]);
        writes.set_setting("b", b"1").unwrap();
        let within = reads.still().unwrap();
        drop(within);
        assert_eq!(names(&reads), ["a"]);
        drop(still);
        assert_eq!(names(&reads), ["a", "b"]);
    }

    #[test]
    fn a_part_goes_back_alone_and_nothing_stays_of_a_whole_that_is_not_kept() {
        let mut store = Store::in_memory().unwrap();
        let whole = store.begin_all().unwrap();
        store.set_setting("a", b"1").unwrap();
        let part = store.begin_all().unwrap();
        assert_eq!((whole, part), (false, true));
        store.set_setting("b", b"1").unwrap();
        store.end_all(part, false).unwrap();
        let part = store.begin_all().unwrap();
        store.set_setting("c", b"1").unwrap();
        store.end_all(part, true).unwrap();
        store.end_all(whole, true).unwrap();
        assert_eq!(names(&store), ["a", "c"]);
        let whole = store.begin_all().unwrap();
        store.set_setting("d", b"1").unwrap();
        store.end_all(whole, false).unwrap();
        assert_eq!(names(&store), ["a", "c"]);
    }

    #[test]
    fn a_whole_that_sqlite_rolled_back_by_itself_is_not_told_as_kept() {
        let mut store = Store::in_memory().unwrap();
        let whole = store.begin_all().unwrap();
        store.connection.execute_batch("ROLLBACK").unwrap();
        assert!(matches!(store.end_all(whole, true), Err(StoreError::Unexpected(_))));
    }
}
