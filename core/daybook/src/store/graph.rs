//! The graph of a book without what its entries say: who stands after whom.

use rusqlite::OptionalExtension;

use super::truth::hashes;
use super::{StoreError, Truth};
use crate::book::BookId;
use crate::gate::{Actor, ChangeHash};

/// Where a change stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Joint {
    /// Its number here.
    pub n: i64,
    /// Its number among those of its hand.
    pub seq: u64,
    /// The changes it names as its predecessors.
    pub deps: Vec<ChangeHash>,
}

impl Truth<'_> {
    /// The last change of a hand up to a sequence number that names another change than its own hand's one
    /// before. All between follow from it one by one.
    ///
    /// # Errors
    /// As any read.
    pub fn joint(&self, book: BookId, actor: Actor, seq: u64) -> Result<Option<Joint>, StoreError> {
        let Some(no) = self.book_no(book)? else { return Ok(None) };
        let mut query = self.0.prepare_cached(
            "SELECT n, seq, deps FROM entry WHERE book = ?1 AND actor = ?2 AND seq <= ?3 AND deps IS NOT NULL
             ORDER BY seq DESC LIMIT 1",
        )?;
        let upto = i64::try_from(seq).unwrap_or(i64::MAX);
        let joint = query.query_row((no, actor.0, upto), |row| {
            let deps: Vec<u8> = row.get(2)?;
            Ok(Joint { n: row.get(0)?, seq: row.get::<_, i64>(1)?.unsigned_abs(), deps: hashes(&deps) })
        });
        Ok(joint.optional()?)
    }

    /// The number of a change here, its hand, and its number among those of its hand.
    ///
    /// # Errors
    /// As any read.
    pub fn hand_of(&self, hash: &ChangeHash) -> Result<Option<(i64, Actor, u64)>, StoreError> {
        let mut query = self.0.prepare_cached("SELECT n, actor, seq FROM entry WHERE hash = ?1")?;
        let found = query.query_row([hash.0], |row| {
            Ok((row.get(0)?, Actor(row.get(1)?), row.get::<_, i64>(2)?.unsigned_abs()))
        });
        Ok(found.optional()?)
    }
}
