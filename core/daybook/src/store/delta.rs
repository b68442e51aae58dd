//! What came after a number, and which books it touched: the questions of an exchange.

use std::collections::BTreeSet;

use chrono::{DateTime, Datelike};
use rusqlite::OptionalExtension;
use sumpbook_trade::TruckId;

use super::{HeldEntry, StoreError, Truth};
use crate::book::BookId;
use crate::gate::ChangeHash;

/// So many entries are looked through faster than a book's own are found.
const FEW: i64 = 512;
/// So many entries of the followed books are found one by one; beyond that all that came since is looked through.
const WORTH_IT: usize = 2_048;

impl Truth<'_> {
    /// The books of one truck, by year.
    ///
    /// # Errors
    /// As any read.
    pub fn books_of(&self, truck: TruckId) -> Result<Vec<BookId>, StoreError> {
        let mut query = self.0.prepare_cached("SELECT year FROM book WHERE truck = ?1 ORDER BY year")?;
        let rows = query.query_map([truck.bytes()], |row| Ok(BookId::Truck { truck, year: row.get(0)? }))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Entries of these books after a number, in order, at most `most`. It costs what came since to these books, as
    /// long as that is not very much; then what came since to all.
    ///
    /// # Errors
    /// As any read.
    pub fn after(&self, n: i64, books: &[BookId], most: i64) -> Result<Vec<HeldEntry>, StoreError> {
        let changed: Vec<BookId> = self.changed_after(n, books)?.into_iter().map(|(book, _)| book).collect();
        if changed.is_empty() {
            return Ok(Vec::new());
        }
        if self.last_n()?.saturating_sub(n) > FEW
            && let Some(numbers) = self.numbers_after(n, &changed)?
        {
            let few = usize::try_from(most).unwrap_or(usize::MAX);
            let texts: Vec<String> = numbers.into_iter().take(few).map(|n| n.to_string()).collect();
            let wanted = format!("[{}]", texts.join(","));
            return self.many("e.n IN (SELECT value FROM json_each(?1)) ORDER BY e.n", &[&wanted]);
        }
        // Without the plus sign the books' own index is taken, and with it their whole history.
        self.many(
            "e.n > ?1 AND +e.book IN (SELECT value FROM json_each(?2)) ORDER BY e.n LIMIT ?3",
            &[&n, &self.numbers(&changed)?, &most],
        )
    }

    /// The numbers of all entries of these books after a number; none when there are more than are worth it. It goes
    /// back from the heads: an entry's number is higher than those of the entries it names.
    pub(crate) fn numbers_after(
        &self,
        n: i64,
        books: &[BookId],
    ) -> Result<Option<BTreeSet<i64>>, StoreError> {
        let mut heads = self.0.prepare_cached("SELECT n FROM head WHERE book = ?1 AND n > ?2")?;
        let mut place = self.0.prepare_cached("SELECT book, actor, seq, deps FROM entry WHERE n = ?1")?;
        let mut before =
            self.0.prepare_cached("SELECT n FROM entry WHERE book = ?1 AND actor = ?2 AND seq = ?3 - 1")?;
        let mut named = self.0.prepare_cached("SELECT n FROM entry WHERE hash = ?1")?;
        let (mut found, mut open) = (BTreeSet::new(), Vec::new());
        for book in books {
            let Some(no) = self.book_no(*book)? else { continue };
            for head in heads.query_map((no, n), |row| row.get::<_, i64>(0))? {
                open.push(head?);
            }
        }
        while let Some(next) = open.pop() {
            if !found.insert(next) {
                continue;
            }
            if found.len() > WORTH_IT {
                return Ok(None);
            }
            let (book, actor, seq, deps) = place.query_row([next], |row| {
                Ok((
                    row.get::<_, i64>(0)?,
                    row.get::<_, [u8; 16]>(1)?,
                    row.get::<_, i64>(2)?,
                    row.get::<_, Option<Vec<u8>>>(3)?,
                ))
            })?;
            match deps {
                None => {
                    let below = before.query_row((book, actor, seq), |row| row.get(0)).optional()?;
                    open.extend(below.filter(|below: &i64| *below > n));
                }
                Some(deps) => {
                    for dep in super::truth::hashes(&deps) {
                        let below = named.query_row([dep.0], |row| row.get(0)).optional()?;
                        open.extend(below.filter(|below: &i64| *below > n));
                    }
                }
            }
        }
        Ok(Some(found))
    }

    /// The number of the last entry this carrier brought; 0 when it brought none.
    ///
    /// # Errors
    /// As any read.
    pub fn last_carried(&self, carrier: [u8; 8]) -> Result<i64, StoreError> {
        let mut query =
            self.0.prepare_cached("SELECT n FROM entry WHERE carrier = ?1 ORDER BY n DESC LIMIT 1")?;
        Ok(query.query_row([carrier], |row| row.get(0)).optional()?.unwrap_or(0))
    }

    /// Which of these books have entries after a number, with the number of the last of them; in the order of
    /// those numbers.
    ///
    /// # Errors
    /// As any read.
    pub fn changed_after(&self, n: i64, books: &[BookId]) -> Result<Vec<(BookId, i64)>, StoreError> {
        let mut query = self.0.prepare_cached(
            "SELECT b.truck, b.year, max(h.n) FROM json_each(?2) j JOIN head h ON h.book = j.value
             JOIN book b ON b.no = h.book WHERE h.n > ?1 GROUP BY h.book ORDER BY 3",
        )?;
        let rows = query.query_map((n, self.numbers(books)?), |row| {
            Ok((row.get(0)?, row.get(1)?, row.get::<_, i64>(2)?))
        })?;
        rows.map(|row| {
            let (truck, year, last) = row?;
            Ok((super::truth::book_of(truck, year)?, last))
        })
        .collect()
    }

    /// The books whose heads are not those the shop last acknowledged, the fleet's first.
    ///
    /// # Errors
    /// As any read.
    pub fn unacknowledged_books(&self) -> Result<Vec<BookId>, StoreError> {
        let mut query = self.0.prepare_cached(
            "SELECT b.truck, b.year FROM book b LEFT JOIN receipt r ON r.book = b.no
             WHERE r.heads IS NULL
                OR EXISTS (SELECT 1 FROM head h WHERE h.book = b.no AND instr(r.heads, h.hash) = 0)
             ORDER BY b.truck IS NOT NULL, b.truck, b.year",
        )?;
        let rows = query.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?;
        rows.map(|row| {
            let (truck, year) = row?;
            super::truth::book_of(truck, year)
        })
        .collect()
    }

    /// Whether the shop acknowledged all of a book: its heads are those of the last receipt.
    ///
    /// # Errors
    /// As any read.
    pub fn is_acknowledged(&self, book: BookId) -> Result<bool, StoreError> {
        let Some((acknowledged, _)) = self.receipt(book)? else { return Ok(self.book_no(book)?.is_none()) };
        Ok(self.heads(book)?.iter().all(|head| acknowledged.contains(head)))
    }

    /// The hash of every entry of a book with its month (months since year 0), by hash.
    ///
    /// # Errors
    /// As any read.
    pub fn hashes_by_month(&self, book: BookId) -> Result<Vec<(u64, ChangeHash)>, StoreError> {
        let Some(no) = self.book_no(book)? else { return Ok(Vec::new()) };
        let mut query = self.0.prepare_cached(
            "SELECT f.at, e.hash FROM entry e JOIN fact f ON f.entry = e.n WHERE e.book = ?1 ORDER BY e.hash",
        )?;
        let rows = query.query_map([no], |row| Ok((month(row.get(0)?), ChangeHash(row.get(1)?))))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    fn numbers(&self, books: &[BookId]) -> Result<String, StoreError> {
        let mut numbers = Vec::with_capacity(books.len());
        for book in books {
            numbers.extend(self.book_no(*book)?.map(|no| no.to_string()));
        }
        Ok(format!("[{}]", numbers.join(",")))
    }
}

/// Months since year 0 in UTC; a moment that is no date counts as 1970.
fn month(ms: i64) -> u64 {
    let at = DateTime::from_timestamp_millis(ms).unwrap_or_default();
    u64::try_from(at.year()).unwrap_or(0) * 12 + u64::from(at.month0())
}
