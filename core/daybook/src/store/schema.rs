//! The form of the file: numbered steps, only ever added to.

use rusqlite::{Connection, TransactionBehavior};

use super::StoreError;

/// Every step in order. A step that has been released is never edited: the next one is added.
const STEPS: &[&str] = &[
    include_str!("migrations/0001_truth.sql"),
    include_str!("migrations/0002_projections.sql"),
    include_str!("migrations/0003_photos.sql"),
    include_str!("migrations/0004_sheet.sql"),
    include_str!("migrations/0005_heads.sql"),
    include_str!("migrations/0006_program.sql"),
    include_str!("migrations/0007_session.sql"),
    include_str!("migrations/0008_bears.sql"),
    include_str!("migrations/0009_again.sql"),
    include_str!("migrations/0010_more_bears.sql"),
    include_str!("migrations/0011_sounds.sql"),
    include_str!("migrations/0012_oil_again.sql"),
    include_str!("migrations/0013_services_again.sql"),
];

/// The newest form this program knows.
pub fn newest() -> i64 {
    i64::try_from(STEPS.len()).unwrap_or(i64::MAX)
}

/// Settings every connection needs, in one place.
pub(super) fn prepare(connection: &Connection) -> Result<(), StoreError> {
    connection.busy_timeout(std::time::Duration::from_secs(5))?;
    // FULL: an entry whose call returned is on the disk. temp_store: some phones have no folder for it.
    connection.execute_batch(
        "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;
         PRAGMA temp_store = MEMORY; PRAGMA journal_size_limit = 6291456;",
    )?;
    // A statement is planned once: without this SQLite plans it again whenever other values are bound.
    connection.set_db_config(rusqlite::config::DbConfig::SQLITE_DBCONFIG_ENABLE_QPSG, true)?;
    connection.set_prepared_statement_cache_capacity(64);
    Ok(())
}

/// Brings the file to the newest form, all steps in one transaction.
///
/// # Errors
/// [`StoreError::NewerVersion`] for a file of a newer program: it is left untouched.
pub(super) fn upgrade(connection: &mut Connection) -> Result<(), StoreError> {
    if form(connection)? == newest() {
        return Ok(());
    }
    upgrade_to(connection, STEPS.len())
}

/// The form of a file this program can read. A file of a newer program is not for this one.
///
/// # Errors
/// [`StoreError::NewerVersion`].
pub(super) fn known_form(connection: &Connection) -> Result<i64, StoreError> {
    let (found, known) = (form(connection)?, newest());
    if found > known { Err(StoreError::NewerVersion { found, known }) } else { Ok(found) }
}

fn form(connection: &Connection) -> Result<i64, StoreError> {
    Ok(connection.query_row("PRAGMA user_version", [], |row| row.get(0))?)
}

fn upgrade_to(connection: &mut Connection, steps: usize) -> Result<(), StoreError> {
    let tx = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
    let found = form(&tx)?;
    let known = newest();
    let done = usize::try_from(found).ok().filter(|_| found <= known);
    let done = done.ok_or(StoreError::NewerVersion { found, known })?;
    for step in STEPS.iter().take(steps).skip(done) {
        tx.execute_batch(step)?;
    }
    tx.pragma_update(None, "user_version", i64::try_from(steps).unwrap_or(known))?;
    tx.commit()?;
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn described(connection: &Connection) -> Vec<String> {
        let mut rows =
            connection.prepare("SELECT sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY 1").unwrap();
        rows.query_map([], |row| row.get(0)).unwrap().map(Result::unwrap).collect()
    }

    #[test]
    fn a_file_upgraded_step_by_step_is_like_a_fresh_one() {
        let mut fresh = Connection::open_in_memory().unwrap();
        upgrade(&mut fresh).unwrap();
        for old in 0..STEPS.len() {
            let mut upgraded = Connection::open_in_memory().unwrap();
            upgrade_to(&mut upgraded, old).unwrap();
            upgrade(&mut upgraded).unwrap();
            assert_eq!(described(&upgraded), described(&fresh), "from form {old}");
        }
    }

    #[test]
    fn a_newer_file_is_left_alone_and_says_so() {
        let mut newer = Connection::open_in_memory().unwrap();
        newer.pragma_update(None, "user_version", 99).unwrap();
        let told = upgrade(&mut newer).unwrap_err().to_string();
        assert!(told.contains("Nothing was changed"), "{told}");
        assert!(described(&newer).is_empty());
    }
}
