//! What the hub gives back: the entries a phone lacks, and the heads that are its receipt.

use std::collections::{BTreeMap, BTreeSet, HashSet};

use sumpbook_trade::{Stamp, TruckId};

use super::answer::newest_cursor;
use super::coverage::beyond;
use super::invite::book_of_now;
use super::pages::{Room, packed};
use super::{ExchangeError, digests, follow};
use crate::book::BookId;
use crate::gate::{ChangeHash, KeyId};
use crate::ledger::Ledger;
use crate::parcel::{BookHeads, Cursor, Parcel, Reconcile, limits};
use crate::store::{HeldEntry, StoreError, Truth};

/// Rows read at once while an answer's page fills.
const CHUNK: i64 = 256;
/// Heads in one answer; with a page of entries it stays below what may travel.
const HASHES: usize = 8_192;

/// A request as far as it says what its sender has.
pub(super) struct Asked<'a> {
    pub(super) parcel: &'a Parcel,
    /// Whose it is.
    pub(super) device: KeyId,
    /// What it brought itself.
    pub(super) has: HashSet<ChangeHash>,
    /// Books it brought entries of that were here already: it has no receipt for them.
    pub(super) again: BTreeSet<BookId>,
    /// The trucks it follows; none for a device that was stopped.
    pub(super) trucks: BTreeSet<TruckId>,
    /// Of a stopped device nothing is told but the fleet's book.
    pub(super) stopped: bool,
    /// And of that no more than up to this entry, which stops it: what the shop said since is none of its business.
    pub(super) upto: Option<i64>,
}

/// How far the sender has the hub's entries.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Since {
    /// It does not say.
    Never,
    /// It names an entry that does not stand there: of another life of this hub.
    Unknown,
    After(i64),
}

/// One answer being filled.
struct Page<'t> {
    truth: Truth<'t>,
    room: Room,
    rows: Vec<HeldEntry>,
    /// Books whose heads are told.
    told: Vec<BookId>,
    more: bool,
    /// Nothing that came after this number is given.
    upto: i64,
}

/// Fills the answer with entries, heads and cursors. Returns the number up to which its sender is told.
pub(super) fn give(ledger: &Ledger, asked: &Asked<'_>, answer: &mut Parcel) -> Result<i64, ExchangeError> {
    let truth = ledger.store().truth();
    let followed = followed(&truth, asked)?;
    let since = since(&truth, &asked.parcel.cursors, 0)?;
    let upto = asked.upto.unwrap_or(i64::MAX);
    let mut page =
        Page { truth, room: Room::of_answer(), rows: Vec::new(), told: Vec::new(), more: false, upto };
    let stated = asked.stated();
    let open: Vec<BookId> = followed.iter().copied().filter(|book| !stated.contains(book)).collect();
    let mut to = newest_cursor(ledger)?;
    if let Since::After(n) = since
        && let Some(cut) = page.after(n, &open, &asked.has)?
    {
        to = Some(cut);
    }
    page.compare(asked, answer)?;
    let mut receipts = None;
    if let Since::After(n) = since
        && !page.more
    {
        receipts = page.receipts(asked, n, &open)?;
    }
    let mismatch = asked.parcel.cursors.iter().find(|cursor| cursor.book == Some(BookId::Fleet));
    let mismatch = mismatch.is_some_and(|list| !asked.stopped && *list != follow::digest(&asked.trucks));
    if since == Since::Unknown || mismatch {
        page.told.extend(&followed);
        let now = Stamp::from_parts(i64::try_from(answer.sender_ms).unwrap_or(0), 0);
        for truck in &asked.trucks {
            // A truck of which nothing is recorded yet is told by an empty book.
            if let (Some(now), true) = (now, page.truth.books_of(*truck)?.is_empty()) {
                page.told.push(book_of_now(*truck, now));
            }
        }
        answer.reconcile.push(digests::whole(&page.truth, BookId::Fleet)?);
    }
    page.told.extend(&asked.again);
    page.put_heads(asked, answer)?;
    answer.cursors = match since {
        Since::Unknown => Vec::new(),
        // Let in again one day, it still has to get what it is not told now.
        _ if asked.stopped => Vec::new(),
        _ => to.into_iter().chain(receipts).collect(),
    };
    answer.more = page.more || receipts.is_some();
    let upto = match (since, page.more) {
        (Since::After(_), _) | (Since::Never, false) => to.map_or(0, |cursor| cursor.n),
        _ => 0,
    };
    answer.runs = packed(&page.truth, page.rows);
    Ok(i64::try_from(upto).unwrap_or(i64::MAX))
}

impl Asked<'_> {
    /// The books whose comparison it goes on with.
    fn stated(&self) -> BTreeSet<BookId> {
        let heads = self.parcel.heads.iter().map(|heads| heads.book);
        let all: BTreeSet<BookId> = heads.chain(self.parcel.reconcile.iter().map(|part| part.book)).collect();
        all.into_iter().filter(|book| !self.stopped || *book == BookId::Fleet).collect()
    }
}

fn followed(truth: &Truth<'_>, asked: &Asked<'_>) -> Result<Vec<BookId>, StoreError> {
    let mut books = vec![BookId::Fleet];
    for truck in asked.trucks.iter().filter(|_| !asked.stopped) {
        books.extend(truth.books_of(*truck)?);
    }
    Ok(books)
}

/// What the cursor of all followed books says; the one at `place` among several.
fn since(truth: &Truth<'_>, cursors: &[Cursor], place: usize) -> Result<Since, StoreError> {
    let Some(cursor) = cursors.iter().filter(|cursor| cursor.book.is_none()).nth(place) else {
        return Ok(Since::Never);
    };
    let n = i64::try_from(cursor.n).unwrap_or(0);
    let there = truth.entry(n)?.is_some_and(|held| held.row.hash.prefix() == cursor.tag);
    Ok(if there { Since::After(n) } else { Since::Unknown })
}

impl Page<'_> {
    /// Takes entries of these books after a number. Returns where the page ended when it could not take all.
    fn after(
        &mut self,
        n: i64,
        books: &[BookId],
        has: &HashSet<ChangeHash>,
    ) -> Result<Option<Cursor>, StoreError> {
        let mut to = n;
        loop {
            let rows = self.truth.after(to, books, CHUNK)?;
            let end = (rows.len() as u64) < CHUNK.unsigned_abs();
            for held in rows {
                let next = held.n;
                if next > self.upto {
                    return Ok(None);
                }
                if !has.contains(&held.row.hash) {
                    if !self.room.takes(&held) {
                        self.more = true;
                        return self.cursor(to);
                    }
                    self.rows.push(held);
                }
                to = next;
            }
            if end {
                return Ok(None);
            }
        }
    }

    fn cursor(&self, n: i64) -> Result<Option<Cursor>, StoreError> {
        let held = self.truth.entry(n)?;
        Ok(held.map(|held| Cursor { book: None, n: held.n.unsigned_abs(), tag: held.row.hash.prefix() }))
    }

    /// Goes on with the comparison of every book that the request states, the fleet's first, while there is room.
    fn compare(&mut self, asked: &Asked<'_>, answer: &mut Parcel) -> Result<(), StoreError> {
        let stated = asked.stated();
        let mut heads: Vec<&BookHeads> =
            asked.parcel.heads.iter().filter(|heads| stated.contains(&heads.book)).collect();
        heads.sort_by_key(|heads| heads.book);
        for BookHeads { book, heads, prefixes } in heads {
            let (mut known, mut says) = (Vec::new(), !heads.is_empty() || !prefixes.is_empty());
            for prefix in prefixes {
                known.extend(self.truth.by_prefix(*book, *prefix)?);
            }
            for head in heads {
                if self.truth.op_of(*book, head)?.is_some() {
                    known.push(*head);
                }
            }
            let ids = |part: &&Reconcile| part.book == *book && part.level == digests::IDS;
            for id in asked.parcel.reconcile.iter().filter(ids).flat_map(|part| &part.buckets) {
                says = true;
                known.extend(self.truth.by_prefix(*book, id.part.to_be_bytes())?);
            }
            // Of what it says it has anything that is here tells what it lacks; at worst a little twice.
            if !known.is_empty() || !says {
                let lacking = beyond(&self.truth, *book, &known)?;
                self.take_all(*book, lacking, &asked.has);
            } else if !self.more {
                // Perhaps its sender holds these: then it knows what is lacking here.
                self.told.push(*book);
            }
            self.tell_other_years(*book, &stated)?;
        }
        for part in asked.parcel.reconcile.iter().filter(|part| stated.contains(&part.book)) {
            if part.level == digests::MONTHS {
                let differing = digests::differing(&self.truth, part)?;
                if differing.is_empty() {
                    self.told.push(part.book);
                }
                answer.reconcile.extend(differing);
            } else if part.level == digests::WANTED {
                let mut lacking = BTreeMap::new();
                for bucket in &part.buckets {
                    if let Some(hash) = self.truth.by_prefix(part.book, bucket.part.to_be_bytes())?
                        && let Some(held) = self.truth.by_hash(&hash)?
                    {
                        lacking.insert(held.n, held);
                    }
                }
                self.take_all(part.book, lacking.into_values().collect(), &asked.has);
            }
        }
        Ok(())
    }

    /// Takes all of a book that is lacking, and then tells its heads; or as much as there is room for.
    fn take_all(&mut self, book: BookId, lacking: Vec<HeldEntry>, has: &HashSet<ChangeHash>) {
        let upto = self.upto;
        for held in lacking.into_iter().filter(|held| held.n <= upto && !has.contains(&held.row.hash)) {
            if self.more || !self.room.takes(&held) {
                self.more = true;
                return;
            }
            self.rows.push(held);
        }
        if !self.more {
            self.told.push(book);
        }
    }

    /// Whoever states a book of a truck holds or wants the truck's other years too.
    fn tell_other_years(&mut self, book: BookId, stated: &BTreeSet<BookId>) -> Result<(), StoreError> {
        if let Some(truck) = follow::truck_of(book) {
            let years = self.truth.books_of(truck)?;
            self.told.extend(years.into_iter().filter(|year| !stated.contains(year)));
        }
        Ok(())
    }

    /// Tells the heads of every followed book that changed since the sender last had receipts. Returns how far
    /// when one parcel does not hold them all.
    fn receipts(
        &mut self,
        asked: &Asked<'_>,
        n: i64,
        books: &[BookId],
    ) -> Result<Option<Cursor>, StoreError> {
        let from = match since(&self.truth, &asked.parcel.cursors, 1)? {
            Since::Never => n,
            Since::Unknown => 0,
            Since::After(from) => from.min(n),
        };
        let most = usize::try_from(limits::BOOKS).unwrap_or(usize::MAX);
        let (mut hashes, mut last) = (0, None);
        for (book, of_book) in self.truth.changed_after(from, books)? {
            hashes += self.truth.heads(book)?.len();
            if let Some(last) = last.filter(|_| self.told.len() >= most || hashes > HASHES / 2) {
                return self.cursor(last);
            }
            self.told.push(book);
            last = Some(of_book);
        }
        Ok(None)
    }

    /// Tells the heads of the books that are to be told: by the beginnings of their hashes, and without the book
    /// where they all are of what the sender brought or is given now.
    fn put_heads(&self, asked: &Asked<'_>, answer: &mut Parcel) -> Result<(), StoreError> {
        let most = usize::try_from(limits::HEADS).unwrap_or(usize::MAX);
        let mut holds: HashSet<ChangeHash> = asked.has.clone();
        holds.extend(self.rows.iter().map(|held| held.row.hash));
        let (mut books, mut hashes) = (BTreeSet::new(), 0);
        for book in &self.told {
            if books.len() as u64 >= limits::BOOKS || !books.insert(*book) {
                continue;
            }
            let mut of_book = self.truth.heads(*book)?;
            if self.upto < i64::MAX {
                of_book = self.told_heads(of_book)?;
                // None is no head of an empty book: its sender would ask for ever what it lacks.
                if of_book.is_empty() {
                    continue;
                }
            }
            if of_book.len() > most {
                of_book = self.nearest(of_book, asked.device, most)?;
            }
            hashes += of_book.len();
            if hashes > HASHES {
                continue;
            }
            let (mut held, mut told) =
                (!of_book.is_empty(), BookHeads { book: *book, heads: Vec::new(), prefixes: Vec::new() });
            for head in of_book {
                held &= holds.contains(&head);
                // Doubtful where two begin alike: then whole.
                match self.truth.by_prefix_anywhere(head.prefix())? {
                    Some(_) => told.prefixes.push(head.prefix()),
                    None => told.heads.push(head),
                }
            }
            if held && told.heads.is_empty() {
                answer.held_heads.append(&mut told.prefixes);
            } else {
                answer.heads.push(told);
            }
        }
        Ok(())
    }

    /// Of these heads those of entries that are given at all.
    fn told_heads(&self, heads: Vec<ChangeHash>) -> Result<Vec<ChangeHash>, StoreError> {
        let mut told = Vec::with_capacity(heads.len());
        for head in heads {
            if self.truth.by_hash(&head)?.is_some_and(|held| held.n <= self.upto) {
                told.push(head);
            }
        }
        Ok(told)
    }

    /// Of more heads than are told the sender's own, then the newest: somebody who floods a book must not keep
    /// another from a receipt. Left out they say less, never more: what they reach is sent once again.
    fn nearest(
        &self,
        heads: Vec<ChangeHash>,
        device: KeyId,
        most: usize,
    ) -> Result<Vec<ChangeHash>, StoreError> {
        let mut held = Vec::with_capacity(heads.len());
        for head in &heads {
            held.extend(self.truth.by_hash(head)?);
        }
        held.sort_by_key(|held| (held.row.actor.key() != device, std::cmp::Reverse(held.n)));
        let mut nearest: Vec<ChangeHash> = held.iter().take(most).map(|held| held.row.hash).collect();
        nearest.sort_unstable();
        Ok(nearest)
    }
}
