//! The shop's answer to a file: the driver's receipt, and what the phone lacks.

use std::collections::{BTreeMap, BTreeSet, HashSet};

use sumpbook_trade::{Stamp, TruckId};

use super::coverage::beyond;
use super::invite::{spread, stamped};
use super::pages::{MANY, file, pages};
use super::{ExchangeError, Fate, TakenIn, Told, follow, memory};
use crate::book::BookId;
use crate::gate::{ChangeHash, KeyId};
use crate::ledger::Ledger;
use crate::parcel::{BookHeads, Cursor, Link, Refusal};
use crate::store::{ExchangeRow, HeldEntry};

/// Makes the answer to a file that was taken in, and writes the exchange into the log: for each sender
/// what was admitted, refused or waits, every entry of its books that it lacks, and the shop's heads.
///
/// # Errors
/// [`ExchangeError::NotTheShop`], and as any read or write.
pub fn answer(ledger: &mut Ledger, taken: &TakenIn, now: Stamp) -> Result<Vec<u8>, ExchangeError> {
    if !memory::is_shop(ledger) {
        return Err(ExchangeError::NotTheShop);
    }
    let mut by_sender: BTreeMap<KeyId, Vec<&Told>> = BTreeMap::new();
    for told in taken.told.iter().filter(|told| !told.is_answer) {
        by_sender.entry(told.sender.id()).or_default().push(told);
    }
    by_sender.remove(&ledger.root().shop.id());
    let fresh = stamped(ledger, now)?;
    let to = newest_cursor(ledger)?;
    let (mut parcels, mut log, mut follows) = (Vec::new(), Vec::new(), Vec::new());
    for (sender, told) in by_sender {
        let Some(last) = told.last() else { continue };
        let asked = Asked::of(&told);
        let pages = pages(&ledger.store().truth(), asked.lacking(ledger, &told)?, MANY);
        let heads = asked.shop_heads(ledger)?;
        let mut fresh = fresh.clone();
        for told in told.iter().take(told.len().saturating_sub(1)) {
            fresh.link = Link::Request(told.digest);
            let mut parcel = fresh.clone();
            (parcel.admitted, parcel.refused) = fates(ledger, told)?;
            parcels.push(parcel);
        }
        fresh.link = Link::Request(last.digest);
        let mut own = spread(&fresh, pages, heads);
        if let Some(first) = own.first_mut() {
            (first.admitted, first.refused) = fates(ledger, last)?;
        }
        if let Some(end) = own.last_mut() {
            end.cursors = to.into_iter().collect();
        }
        parcels.append(&mut own);
        follows.push((sender, asked.trucks));
        log.push(ExchangeRow {
            device: sender.0,
            at_ms: i64::try_from(fresh.sender_ms).unwrap_or(i64::MAX),
            from_n: asked.cursor.map_or(0, |cursor| i64::try_from(cursor.n).unwrap_or(0)),
            to_n: to.map_or(0, |cursor| i64::try_from(cursor.n).unwrap_or(0)),
            // How long the file was on its way nobody knows.
            off_ms: None,
        });
    }
    if parcels.is_empty() {
        parcels.push(fresh);
    }
    let (bytes, _) = file(parcels, ledger.own_key())?;
    for (sender, trucks) in &follows {
        follow::remember(ledger.store_mut(), *sender, trucks)?;
    }
    for row in &log {
        ledger.store_mut().log_exchange(row)?;
    }
    Ok(bytes)
}

/// The cursor after everything held now.
pub(super) fn newest_cursor(ledger: &Ledger) -> Result<Option<Cursor>, ExchangeError> {
    let truth = ledger.store().truth();
    let last = truth.entry(truth.last_n()?)?;
    Ok(last.map(|held| Cursor { book: None, n: held.n.unsigned_abs(), tag: held.row.hash.prefix() }))
}

/// How many of each run are in the books, and why the others are not. What waited may have come in since.
pub(super) fn fates(ledger: &Ledger, told: &Told) -> Result<(Vec<u64>, Vec<Refusal>), ExchangeError> {
    let (mut admitted, mut refused) = (Vec::new(), Vec::new());
    let mut entries = told.entries.iter();
    for length in &told.runs {
        let mut of_run = 0;
        for entry in entries.by_ref().take(*length) {
            match entry.fate {
                Fate::Admitted | Fate::Known => of_run += 1,
                Fate::Waiting(_) if !ledger.store().truth().by_id(entry.id)?.is_empty() => of_run += 1,
                Fate::Waiting(missing) => {
                    refused.push(Refusal { id: entry.id, code: 0, missing: Some(missing) });
                }
                Fate::Refused(reason) => refused.push(Refusal {
                    id: entry.id,
                    code: reason.code(),
                    // Which of its placings: the same entry placed again is another change.
                    missing: entry.hash.map(ChangeHash::prefix),
                }),
            }
        }
        admitted.push(of_run);
    }
    Ok((admitted, refused))
}

/// What a sender said of its own books.
struct Asked {
    stated: BTreeMap<BookId, Vec<ChangeHash>>,
    trucks: BTreeSet<TruckId>,
    cursor: Option<Cursor>,
}

impl Asked {
    fn of(told: &[&Told]) -> Asked {
        let mut stated: BTreeMap<BookId, Vec<ChangeHash>> = BTreeMap::new();
        let mut trucks = BTreeSet::new();
        let mut follow = |book| {
            if let BookId::Truck { truck, .. } = book {
                trucks.insert(truck);
            }
        };
        for told in told {
            for heads in &told.heads {
                follow(heads.book);
                stated.entry(heads.book).or_default().extend(&heads.heads);
            }
            told.entries.iter().for_each(|entry| follow(entry.book));
        }
        let cursor = told.iter().flat_map(|told| &told.cursors).find(|cursor| cursor.book.is_none()).copied();
        Asked { stated, trucks, cursor }
    }

    fn follows(&self, book: BookId) -> bool {
        match book {
            BookId::Fleet => true,
            BookId::Truck { truck, .. } => self.trucks.contains(&truck),
        }
    }

    /// Its entries beyond the heads it stated; in a book where those are strange to the shop, beyond its
    /// cursor. What it sent itself it has.
    fn lacking(&self, ledger: &Ledger, told: &[&Told]) -> Result<Vec<HeldEntry>, ExchangeError> {
        let truth = ledger.store().truth();
        let has: HashSet<ChangeHash> =
            told.iter().flat_map(|told| &told.entries).filter_map(|entry| entry.hash).collect();
        let mut after = 0;
        if let Some(cursor) = self.cursor {
            let n = i64::try_from(cursor.n).unwrap_or(0);
            // A cursor whose entry is not there is of another life of this shop.
            after = truth.entry(n)?.filter(|held| held.row.hash.prefix() == cursor.tag).map_or(0, |_| n);
        }
        let mut lacking = Vec::new();
        for book in truth.books()?.into_iter().filter(|book| self.follows(*book)) {
            let stated = self.stated.get(&book).map(Vec::as_slice).unwrap_or_default();
            let mut strange = false;
            for head in stated {
                strange |= truth.op_of(book, head)?.is_none();
            }
            let from = if strange { after } else { 0 };
            let beyond = beyond(&truth, book, stated)?;
            lacking.extend(beyond.into_iter().filter(|held| held.n > from && !has.contains(&held.row.hash)));
        }
        Ok(lacking)
    }

    fn shop_heads(&self, ledger: &Ledger) -> Result<Vec<BookHeads>, ExchangeError> {
        let truth = ledger.store().truth();
        let mut heads = Vec::new();
        let mut books: BTreeSet<BookId> = truth.books()?.into_iter().collect();
        books.extend(self.stated.keys());
        for book in books.into_iter().filter(|book| self.follows(*book)) {
            heads.push(BookHeads { book, heads: truth.heads(book)?, prefixes: vec![] });
        }
        Ok(heads)
    }
}
