//! What came after a number, and which books it touched: the questions of an exchange.

use chrono::{DateTime, Datelike};
use rusqlite::OptionalExtension;
use sumpbook_trade::TruckId;

use super::{HeldEntry, StoreError, Truth};
use crate::book::BookId;
use crate::gate::ChangeHash;

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

    /// Entries of these books after a number, in order, at most `most`. It costs what came since, whatever the
    /// books hold.
    ///
    /// # Errors
    /// As any read.
    pub fn after(&self, n: i64, books: &[BookId], most: i64) -> Result<Vec<HeldEntry>, StoreError> {
        // Without the plus sign the books' own index is taken, and with it their whole history.
        self.many(
            "e.n > ?1 AND +e.book IN (SELECT value FROM json_each(?2)) ORDER BY e.n LIMIT ?3",
            &[&n, &self.numbers(books)?, &most],
        )
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
            "SELECT b.truck, b.year, max(e.n) FROM entry e JOIN book b ON b.no = e.book
             WHERE e.n > ?1 AND +e.book IN (SELECT value FROM json_each(?2)) GROUP BY e.book ORDER BY 3",
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
