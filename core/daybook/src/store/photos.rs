//! Which entries name a photo or a sound, and how far it came on its way to the shop. They themselves are files, and
//! what is said of photos here holds for sounds as well.

use std::collections::BTreeSet;

use rusqlite::OptionalExtension;
use sumpbook_trade::record::Digest;

use super::{Store, StoreError, Transaction, Truth};

/// How far a photo came on its way to the shop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PhotoRow {
    /// Which.
    pub photo: Digest,
    /// Its bytes.
    pub size: u64,
    /// Of those, at the shop as far as this phone knows.
    pub reached: u64,
    /// Whole at the shop since this moment, milliseconds.
    pub there_ms: Option<i64>,
}

impl Truth<'_> {
    /// Numbers of the entries that name a photo, ascending; none when no entry does.
    ///
    /// # Errors
    /// As any read.
    pub fn naming_photo(&self, photo: Digest) -> Result<Vec<i64>, StoreError> {
        let mut query =
            self.0.prepare_cached("SELECT entry FROM photo_named WHERE photo = ?1 ORDER BY entry")?;
        let rows = query.query_map([photo.0], |row| row.get(0))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Every photo that some entry names.
    ///
    /// # Errors
    /// As any read.
    pub fn named_photos(&self) -> Result<BTreeSet<Digest>, StoreError> {
        let mut query = self.0.prepare_cached("SELECT DISTINCT photo FROM photo_named")?;
        let rows = query.query_map([], |row| row.get(0).map(Digest))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// What entries from a number on name, entry by entry: each photo, and whether it is a sound.
    ///
    /// # Errors
    /// As any read.
    pub fn photos_named_from(&self, n: i64) -> Result<Vec<(i64, Digest, bool)>, StoreError> {
        let mut query = self.0.prepare_cached(
            "SELECT entry, photo, sound FROM photo_named WHERE entry >= ?1 ORDER BY entry, photo",
        )?;
        let rows = query.query_map([n], |row| Ok((row.get(0)?, Digest(row.get(1)?), row.get(2)?)))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The photos an entry names, and its sounds.
    ///
    /// # Errors
    /// As any read.
    pub fn photos_named_by(&self, n: i64) -> Result<Vec<Digest>, StoreError> {
        let mut query =
            self.0.prepare_cached("SELECT photo FROM photo_named WHERE entry = ?1 ORDER BY photo")?;
        let rows = query.query_map([n], |row| row.get(0).map(Digest))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }
}

impl Store {
    /// How far a photo came; none while nothing of it was sent.
    ///
    /// # Errors
    /// As any read.
    pub fn photo(&self, photo: Digest) -> Result<Option<PhotoRow>, StoreError> {
        let mut query =
            self.connection.prepare_cached("SELECT size, reached, there FROM photo_sent WHERE photo = ?1")?;
        let row = query.query_row([photo.0], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?))).optional()?;
        Ok(row.map(|(size, reached, there_ms): (i64, i64, _)| PhotoRow {
            photo,
            size: size.unsigned_abs(),
            reached: reached.unsigned_abs(),
            there_ms,
        }))
    }

    /// Remembers how far it came.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_photo_row(&mut self, row: &PhotoRow) -> Result<(), StoreError> {
        let number = |n: u64| i64::try_from(n).unwrap_or(i64::MAX);
        let tx = self.write()?;
        tx.execute(
            "INSERT OR REPLACE INTO photo_sent (photo, size, reached, there) VALUES (?1, ?2, ?3, ?4)",
            (row.photo.0, number(row.size), number(row.reached), row.there_ms),
        )?;
        tx.commit()?;
        Ok(())
    }

    /// Forgets how far every photo came: the shop was set back and may lack any of them.
    ///
    /// # Errors
    /// As any write.
    pub fn doubt_photos(&mut self) -> Result<(), StoreError> {
        let tx = self.write()?;
        tx.execute("DELETE FROM photo_sent", [])?;
        tx.commit()?;
        Ok(())
    }
}

/// Notes which photos and which sounds an entry names.
pub(super) fn put(
    tx: &Transaction<'_>,
    n: i64,
    photos: &[Digest],
    sounds: &[Digest],
) -> Result<(), StoreError> {
    let named = photos.iter().map(|photo| (photo, false)).chain(sounds.iter().map(|sound| (sound, true)));
    for (file, sound) in named {
        tx.prepare_cached("INSERT OR IGNORE INTO photo_named (photo, entry, sound) VALUES (?1, ?2, ?3)")?
            .execute((file.0, n, sound))?;
    }
    Ok(())
}
