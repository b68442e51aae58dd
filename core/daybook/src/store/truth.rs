//! The table of entries: read and written, one row an admitted change.

use std::collections::HashSet;

use rusqlite::{OptionalExtension, Row};
use sumpbook_trade::{EntryId, TruckId};

use super::{Store, StoreError, Transaction};
use crate::book::{BookId, EntryRow};
use crate::gate::{Actor, ChangeHash, KeyId};
use crate::judgement::Judged;

/// One admitted entry with its number here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HeldEntry {
    /// Its number here: admission order.
    pub n: i64,
    /// The entry at its place.
    pub row: EntryRow,
    /// When it came here, milliseconds.
    pub received_ms: i64,
    /// Key id of who brought it; none when written here.
    pub carrier: Option<[u8; 8]>,
}

/// Another entry under the same id.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Twin {
    /// Its number here.
    pub n: i64,
    /// Its change.
    pub hash: ChangeHash,
    /// Who wrote it.
    pub actor: Actor,
    /// It says the same, byte for byte.
    pub same: bool,
    /// What the projection has it as; none when it was not projected yet.
    pub judged: Option<Judged>,
}

const COLUMNS: &str = "e.n, e.hash, b.truck, b.year, e.actor, e.seq, e.deps, e.op, e.id, e.payload, e.sig, \
                       e.received, e.carrier, e.book";

/// What a reader or writer may ask of the truth, inside or outside a transaction.
pub struct Truth<'c>(pub(super) &'c rusqlite::Connection);

impl Store {
    /// The truth, for reading.
    pub fn truth(&self) -> Truth<'_> {
        Truth(&self.connection)
    }
}

impl Truth<'_> {
    pub(super) fn book_no(&self, book: BookId) -> Result<Option<i64>, StoreError> {
        let (truck, year) = book_columns(book);
        let mut query = self.0.prepare_cached("SELECT no FROM book WHERE truck IS ?1 AND year IS ?2")?;
        Ok(query.query_row((truck, year), |row| row.get(0)).optional()?)
    }

    /// Every book, the fleet book first, then by truck and year.
    ///
    /// # Errors
    /// As any read.
    pub fn books(&self) -> Result<Vec<BookId>, StoreError> {
        let mut query =
            self.0.prepare_cached("SELECT truck, year FROM book ORDER BY truck IS NOT NULL, truck, year")?;
        let rows = query.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?;
        rows.map(|row| row.map_err(StoreError::from).and_then(|(truck, year)| book_of(truck, year))).collect()
    }

    /// The heads of a book, ascending.
    ///
    /// # Errors
    /// As any read.
    pub fn heads(&self, book: BookId) -> Result<Vec<ChangeHash>, StoreError> {
        let Some(no) = self.book_no(book)? else { return Ok(Vec::new()) };
        let mut query = self.0.prepare_cached("SELECT hash FROM head WHERE book = ?1 ORDER BY hash")?;
        let rows = query.query_map([no], |row| Ok(ChangeHash(row.get(0)?)))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The heads of a book with their ops, ascending by hash.
    ///
    /// # Errors
    /// As any read.
    pub fn heads_and_ops(&self, book: BookId) -> Result<Vec<(ChangeHash, u64)>, StoreError> {
        let Some(no) = self.book_no(book)? else { return Ok(Vec::new()) };
        let mut query = self.0.prepare_cached(
            "SELECT h.hash, e.op FROM head h JOIN entry e ON e.hash = h.hash WHERE h.book = ?1 ORDER BY h.hash",
        )?;
        let rows = query
            .query_map([no], |row| Ok((ChangeHash(row.get(0)?), row.get::<_, i64>(1)?.unsigned_abs())))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The last entry of an actor in a book: its number there, its hash, its op.
    ///
    /// # Errors
    /// As any read.
    pub fn last_of(&self, book: BookId, actor: Actor) -> Result<Option<(u64, ChangeHash, u64)>, StoreError> {
        let Some(no) = self.book_no(book)? else { return Ok(None) };
        let mut query = self.0.prepare_cached(
            "SELECT seq, hash, op FROM entry WHERE book = ?1 AND actor = ?2 ORDER BY seq DESC LIMIT 1",
        )?;
        let last = query.query_row((no, actor.0), |row| {
            Ok((
                row.get::<_, i64>(0)?.unsigned_abs(),
                ChangeHash(row.get(1)?),
                row.get::<_, i64>(2)?.unsigned_abs(),
            ))
        });
        Ok(last.optional()?)
    }

    /// Whether any entry has this id.
    ///
    /// # Errors
    /// As any read.
    pub fn has_id(&self, id: EntryId) -> Result<bool, StoreError> {
        let mut query = self.0.prepare_cached("SELECT 1 FROM entry WHERE id = ?1 LIMIT 1")?;
        Ok(query.exists([id.bytes()])?)
    }

    /// The hash of the entry at this place, if one is there.
    ///
    /// # Errors
    /// As any read.
    pub fn at_place(&self, book: BookId, actor: Actor, seq: u64) -> Result<Option<ChangeHash>, StoreError> {
        let Some(no) = self.book_no(book)? else { return Ok(None) };
        let mut query =
            self.0.prepare_cached("SELECT hash FROM entry WHERE book = ?1 AND actor = ?2 AND seq = ?3")?;
        Ok(query
            .query_row((no, actor.0, i64::try_from(seq).unwrap_or(i64::MAX)), |row| row.get(0))
            .optional()?
            .map(ChangeHash))
    }

    /// The op counter of a change of this book.
    ///
    /// # Errors
    /// As any read.
    pub fn op_of(&self, book: BookId, hash: &ChangeHash) -> Result<Option<u64>, StoreError> {
        let Some(no) = self.book_no(book)? else { return Ok(None) };
        let mut query = self.0.prepare_cached("SELECT op FROM entry WHERE hash = ?1 AND book = ?2")?;
        Ok(query.query_row((hash.0, no), |row| row.get::<_, i64>(0)).optional()?.map(i64::unsigned_abs))
    }

    /// The change of this book whose hash begins so; none when there is none, or more than one.
    ///
    /// # Errors
    /// As any read.
    pub fn by_prefix(&self, book: BookId, prefix: [u8; 8]) -> Result<Option<ChangeHash>, StoreError> {
        let Some(no) = self.book_no(book)? else { return Ok(None) };
        let mut end = prefix.to_vec();
        end.extend([0xff; 25]);
        let mut query = self
            .0
            .prepare_cached("SELECT hash FROM entry WHERE hash >= ?1 AND hash < ?2 AND book = ?3 LIMIT 2")?;
        let rows = query.query_map((prefix, end, no), |row| row.get(0))?;
        let found: Vec<[u8; 32]> = rows.collect::<Result<_, _>>()?;
        Ok(match found.as_slice() {
            [one] => Some(ChangeHash(*one)),
            _ => None,
        })
    }

    /// The change of any book whose hash begins so, with its book; none when there is none, or more than one.
    ///
    /// # Errors
    /// As any read.
    pub fn by_prefix_anywhere(&self, prefix: [u8; 8]) -> Result<Option<(BookId, ChangeHash)>, StoreError> {
        let mut end = prefix.to_vec();
        end.extend([0xff; 25]);
        let mut query = self.0.prepare_cached(
            "SELECT b.truck, b.year, e.hash FROM entry e JOIN book b ON b.no = e.book
             WHERE e.hash >= ?1 AND e.hash < ?2 LIMIT 2",
        )?;
        let mut rows = query.query((prefix, end))?;
        let Some(row) = rows.next()? else { return Ok(None) };
        let found = (book_of(row.get(0)?, row.get(1)?)?, ChangeHash(row.get(2)?));
        Ok(if rows.next()?.is_some() { None } else { Some(found) })
    }

    /// The highest number given; 0 in an empty book.
    ///
    /// # Errors
    /// As any read.
    pub fn last_n(&self) -> Result<i64, StoreError> {
        Ok(self.0.query_row("SELECT coalesce(max(n), 0) FROM entry", [], |row| row.get(0))?)
    }

    /// The last moment anything was received.
    ///
    /// # Errors
    /// As any read.
    pub fn last_received(&self) -> Result<i64, StoreError> {
        let mut query = self
            .0
            .prepare_cached("SELECT coalesce((SELECT received FROM entry ORDER BY n DESC LIMIT 1), 0)")?;
        Ok(query.query_row([], |row| row.get(0))?)
    }

    /// The number of the last entry received by a moment: what was known then.
    ///
    /// # Errors
    /// As any read.
    pub fn upto(&self, at_ms: i64) -> Result<i64, StoreError> {
        // `received` never runs back, so the border is found by halving; no index is kept for it.
        let mut query =
            self.0.prepare_cached("SELECT n, received FROM entry WHERE n >= ?1 ORDER BY n LIMIT 1")?;
        let (mut known, mut low, mut high) = (0, 1, self.last_n()?);
        while low <= high {
            let middle = low + (high - low) / 2;
            let found: Option<(i64, i64)> =
                query.query_row([middle], |row| Ok((row.get(0)?, row.get(1)?))).optional()?;
            match found {
                Some((n, received)) if received <= at_ms => (known, low) = (n, n + 1),
                _ => high = middle - 1,
            }
        }
        Ok(known)
    }

    /// One entry by its number.
    ///
    /// # Errors
    /// As any read.
    pub fn entry(&self, n: i64) -> Result<Option<HeldEntry>, StoreError> {
        self.one("e.n = ?1", &[&n])
    }

    /// One entry by the hash of its change.
    ///
    /// # Errors
    /// As any read.
    pub fn by_hash(&self, hash: &ChangeHash) -> Result<Option<HeldEntry>, StoreError> {
        self.one("e.hash = ?1", &[&hash.0])
    }

    /// Every entry with this id, in the order they came. More than one: one id with two contents, or placed again.
    ///
    /// # Errors
    /// As any read.
    pub fn by_id(&self, id: EntryId) -> Result<Vec<HeldEntry>, StoreError> {
        self.many("e.id = ?1 ORDER BY e.n", &[&id.bytes()])
    }

    /// Every entry with this id by ascending hash, and whether it says the same as `payload`.
    ///
    /// # Errors
    /// As any read.
    pub fn twins(&self, id: EntryId, payload: &[u8]) -> Result<Vec<Twin>, StoreError> {
        let mut query = self.0.prepare_cached(
            "SELECT e.n, e.hash, e.actor, e.payload = ?2, f.judged FROM entry e LEFT JOIN fact f ON f.entry = e.n
             WHERE e.id = ?1 ORDER BY e.hash",
        )?;
        let rows = query.query_map((id.bytes(), payload), |row| {
            let (hash, actor) = (ChangeHash(row.get(1)?), Actor(row.get(2)?));
            let judged = row.get::<_, Option<i64>>(4)?.map(Judged::from_number);
            Ok(Twin { n: row.get(0)?, hash, actor, same: row.get(3)?, judged })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Entries after a number up to another, in order, at most `most`.
    ///
    /// # Errors
    /// As any read.
    pub fn between(&self, after: i64, upto: i64, most: i64) -> Result<Vec<HeldEntry>, StoreError> {
        self.many("e.n > ?1 AND e.n <= ?2 ORDER BY e.n LIMIT ?3", &[&after, &upto, &most])
    }

    /// All of one book, in order.
    ///
    /// # Errors
    /// As any read.
    pub fn of_book(&self, book: BookId) -> Result<Vec<HeldEntry>, StoreError> {
        let Some(no) = self.book_no(book)? else { return Ok(Vec::new()) };
        self.many("e.book = ?1 ORDER BY e.n", &[&no])
    }

    /// All that one key signed in a book, in order.
    ///
    /// # Errors
    /// As any read.
    pub fn of_signer(&self, book: BookId, key: KeyId) -> Result<Vec<HeldEntry>, StoreError> {
        let Some(no) = self.book_no(book)? else { return Ok(Vec::new()) };
        let (first, last) = (Actor::from_parts(key, [0; 8]), Actor::from_parts(key, [0xff; 8]));
        self.many("e.book = ?1 AND e.actor BETWEEN ?2 AND ?3 ORDER BY e.n", &[&no, &first.0, &last.0])
    }

    fn one(&self, such: &str, values: &[&dyn rusqlite::ToSql]) -> Result<Option<HeldEntry>, StoreError> {
        Ok(self.many(such, values)?.into_iter().next())
    }

    pub(super) fn many(
        &self,
        such: &str,
        values: &[&dyn rusqlite::ToSql],
    ) -> Result<Vec<HeldEntry>, StoreError> {
        let sql = format!("SELECT {COLUMNS} FROM entry e JOIN book b ON b.no = e.book WHERE {such}");
        let mut query = self.0.prepare_cached(&sql)?;
        let mut rows = query.query(values)?;
        let mut found = Vec::new();
        while let Some(row) = rows.next()? {
            found.push(self.read(row)?);
        }
        Ok(found)
    }

    fn read(&self, row: &Row<'_>) -> Result<HeldEntry, StoreError> {
        let book = book_of(row.get(2)?, row.get(3)?)?;
        let actor = Actor(row.get(4)?);
        let seq = row.get::<_, i64>(5)?.unsigned_abs();
        let deps = match row.get_ref(6)?.as_blob_or_null().map_err(rusqlite::Error::from)? {
            Some(bytes) => hashes(bytes),
            None => self.predecessor(row.get(13)?, actor, seq)?.into_iter().collect(),
        };
        let entry = EntryRow {
            hash: ChangeHash(row.get(1)?),
            book,
            actor,
            seq,
            deps,
            op: row.get::<_, i64>(7)?.unsigned_abs(),
            id: EntryId::from_bytes(row.get(8)?),
            payload: row.get(9)?,
            signature: row.get(10)?,
        };
        Ok(HeldEntry { n: row.get(0)?, row: entry, received_ms: row.get(11)?, carrier: row.get(12)? })
    }

    fn predecessor(&self, book: i64, actor: Actor, seq: u64) -> Result<Option<ChangeHash>, StoreError> {
        let mut query =
            self.0.prepare_cached("SELECT hash FROM entry WHERE book = ?1 AND actor = ?2 AND seq = ?3")?;
        let before = i64::try_from(seq).unwrap_or(i64::MAX) - 1;
        Ok(query.query_row((book, actor.0, before), |row| row.get(0)).optional()?.map(ChangeHash))
    }
}

/// Hashes as they stand in a column, one after the other.
pub(super) fn hashes(bytes: &[u8]) -> Vec<ChangeHash> {
    bytes.chunks_exact(32).filter_map(|c| c.try_into().ok().map(ChangeHash)).collect()
}

/// Writes an admitted row and moves the heads of its book, under the next number or the one given. Returns
/// its number.
pub(super) fn insert(
    tx: &Transaction<'_>,
    number: Option<i64>,
    row: &EntryRow,
    previous: Option<ChangeHash>,
    received_ms: i64,
    carrier: Option<[u8; 8]>,
) -> Result<i64, StoreError> {
    let no = match Truth(tx).book_no(row.book)? {
        Some(no) => no,
        None => {
            tx.execute("INSERT INTO book (truck, year) VALUES (?1, ?2)", book_columns(row.book))?;
            tx.last_insert_rowid()
        }
    };
    // Only the predecessor: the usual case, and the 32 bytes are in the row before.
    let only_previous = previous.is_some_and(|p| row.deps.as_slice() == [p]);
    let deps: Option<Vec<u8>> = (!only_previous).then(|| row.deps.iter().flat_map(|d| d.0).collect());
    let signed = |n: u64| i64::try_from(n).unwrap_or(i64::MAX);
    tx.prepare_cached(
        "INSERT INTO entry (hash, book, actor, seq, deps, op, id, payload, sig, received, carrier, n)
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)",
    )?
    .execute((
        row.hash.0,
        no,
        row.actor.0,
        signed(row.seq),
        deps,
        signed(row.op),
        row.id.bytes(),
        &row.payload,
        row.signature,
        received_ms,
        carrier,
        number,
    ))?;
    let n = tx.last_insert_rowid();
    let mut drop = tx.prepare_cached("DELETE FROM head WHERE book = ?1 AND hash = ?2")?;
    for dep in &row.deps {
        drop.execute((no, dep.0))?;
    }
    tx.prepare_cached("INSERT INTO head (book, hash, n) VALUES (?1, ?2, ?3)")?
        .execute((no, row.hash.0, n))?;
    Ok(n)
}

/// Takes a row out of its book again: only for a branch that lost a fork. The heads are set by the caller.
pub(super) fn remove(tx: &Transaction<'_>, held: &HeldEntry) -> Result<(), StoreError> {
    for sql in [
        "DELETE FROM fact WHERE entry = ?1",
        "DELETE FROM aside WHERE entry = ?1",
        "DELETE FROM decided WHERE by_entry = ?1",
        "DELETE FROM photo_named WHERE entry = ?1",
        "DELETE FROM entry WHERE n = ?1",
    ] {
        tx.execute(sql, [held.n])?;
    }
    Ok(())
}

/// Sets the heads of a book anew from its rows: what no other row of it names as a predecessor.
pub(super) fn reset_heads(tx: &Transaction<'_>, book: BookId) -> Result<(), StoreError> {
    let truth = Truth(tx);
    let Some(no) = truth.book_no(book)? else { return Ok(()) };
    let rows = truth.of_book(book)?;
    let named: HashSet<ChangeHash> = rows.iter().flat_map(|held| held.row.deps.iter().copied()).collect();
    tx.execute("DELETE FROM head WHERE book = ?1", [no])?;
    for held in rows.iter().filter(|held| !named.contains(&held.row.hash)) {
        tx.execute("INSERT INTO head (book, hash, n) VALUES (?1, ?2, ?3)", (no, held.row.hash.0, held.n))?;
    }
    Ok(())
}

fn book_columns(book: BookId) -> (Option<[u8; 16]>, Option<u16>) {
    match book {
        BookId::Fleet => (None, None),
        BookId::Truck { truck, year } => (Some(truck.bytes()), Some(year)),
    }
}

pub(super) fn book_of(truck: Option<[u8; 16]>, year: Option<u16>) -> Result<BookId, StoreError> {
    match (truck, year) {
        (None, None) => Ok(BookId::Fleet),
        (Some(truck), Some(year)) => Ok(BookId::Truck { truck: TruckId::from_bytes(truck), year }),
        _ => Err(StoreError::Unexpected("a book with a truck and no year, or the other way round")),
    }
}
