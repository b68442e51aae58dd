//! The phone's side of one exchange: what the hub answered.

use std::collections::BTreeSet;

use sumpbook_trade::{EntryId, Stamp};

use super::admit_runs::admit_runs;
use super::invite::book_of_now;
use super::queue::{self, Queue, STATED, Stage};
use super::shelf_again::shelf_again;
use super::take_in::{Said, heard_from_shop, place_lost_again, receipts};
use super::told_heads::{Lacking, complete};
use super::{ExchangeError, Fate, TakenIn, ToldEntry, digests, follow, memory};
use crate::book::BookId;
use crate::gate::ChangeHash;
use crate::ledger::Ledger;
use crate::parcel::{BookHeads, Parcel, open_answer};

/// A longer way there and back says nothing of clocks: somebody may have set one meanwhile.
const LONGEST_TRIP_MS: i64 = 60_000;

/// What came of one answer.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Came {
    /// The entries, as of a file.
    pub taken: TakenIn,
    /// Entries the hub could not take because something before them is missing there. They stay on this phone,
    /// and the next request finds out what is missing.
    pub missing: usize,
    /// The shop has let this phone in; if not, it waits for somebody's yes.
    pub enrolled: bool,
    /// The shop stopped this device.
    pub stopped: bool,
    /// Exchange again now: there is more, on this side or on the other.
    pub more: bool,
    /// Permission to send photos for a quarter of an hour.
    pub token: Option<[u8; 32]>,
    /// Hub time minus this clock, milliseconds, as learnt from this answer.
    pub clock_off_ms: Option<i64>,
}

/// Takes in the answer to a request: `request` is the request's digest, `sent_at` the moment it was sent by this
/// phone's clock. Everything in one commit; taken twice it changes nothing the second time.
///
/// # Errors
/// [`ExchangeError::NotTheAnswer`] for bytes that are not the shop's answer to that request, then nothing is
/// changed; and as any write.
pub fn take_answer(
    ledger: &mut Ledger,
    request: [u8; 32],
    bytes: &[u8],
    sent_at: Stamp,
    now: Stamp,
) -> Result<Came, ExchangeError> {
    let shop = ledger.root().shop;
    let parcel = open_answer(bytes, &shop, ledger.root().fleet, request);
    let parcel = parcel.map_err(|error| ExchangeError::NotTheAnswer(error.to_string()))?;
    ledger.in_one_commit(|ledger| take(ledger, parcel, sent_at, now))
}

fn take(ledger: &mut Ledger, mut parcel: Parcel, sent_at: Stamp, now: Stamp) -> Result<Came, ExchangeError> {
    let now_ms = now.unix_ms();
    let before = queue::open(ledger, now)?;
    // Before it was let in this phone sent nothing.
    let enrolled = ledger.key(ledger.own_key().id()).is_some();
    // A phone that was let in told it with every request so far.
    let told = enrolled && memory::program_to_tell(ledger.store())?.is_some();
    let owed_before = if enrolled { owed(ledger, &before)? } else { Owed::new() };
    let mut taken =
        TakenIn { placed_again: place_lost_again(ledger, &parcel, now_ms)?, ..TakenIn::default() };
    let runs = std::mem::take(&mut parcel.runs);
    let own = ledger.own_key().id();
    let own_runs = runs.iter().filter(|run| run.actor.key() == own);
    let own_ids: BTreeSet<EntryId> =
        own_runs.flat_map(|run| run.entries.iter().map(|entry| entry.id)).collect();
    let entries = admit_runs(ledger, runs, now_ms, Some(ledger.root().shop.id().0))?.entries;
    let is_own = |entry: &&ToldEntry| entry.fate == Fate::Admitted && own_ids.contains(&entry.id);
    taken.own_back = entries.iter().filter(is_own).count();
    taken.count(&entries);
    if taken.admitted > 0 {
        taken.admitted += shelf_again(ledger, now_ms)?;
    }
    let lacking = complete(&ledger.store().truth(), &mut parcel)?;
    let mut said = Said::fresh(lacking.books.clone());
    heard_from_shop(ledger, &parcel, now_ms, &mut said)?;
    receipts(ledger, &mut taken, &said)?;
    if told {
        memory::program_told(ledger.store_mut())?;
    }
    let mut came = Came {
        missing: parcel.refused.iter().filter(|refusal| refusal.code == 0).count(),
        enrolled: ledger.key(ledger.own_key().id()).is_some(),
        stopped: stopped(ledger),
        token: parcel.token,
        clock_off_ms: learn_clock(ledger, &parcel, sent_at, now)?,
        ..Came::default()
    };
    if !taken.two_shops {
        let queue = go_on(ledger, &parcel, &entries, (&before, &lacking), now)?;
        let owed = owed(ledger, &queue)?;
        let moved = queue != before || taken.admitted > 0;
        came.more = came.enrolled
            && (parcel.more || (!queue.is_empty() && moved) || (!owed.is_empty() && owed != owed_before));
        queue::keep(ledger.store_mut(), &queue)?;
        if came.enrolled && at_the_shop(ledger, BookId::Fleet)? {
            memory::set_stranger(ledger.store_mut(), false)?;
        }
    }
    came.taken = taken;
    Ok(came)
}

/// Books and the shop's heads of them.
type Owed = Vec<(BookId, Vec<ChangeHash>)>;

/// Every book that the shop's receipt does not cover and that can be sent, with that receipt.
fn owed(ledger: &Ledger, queue: &Queue) -> Result<Owed, ExchangeError> {
    let truth = ledger.store().truth();
    let mut owed = Vec::new();
    for book in truth.unacknowledged_books()? {
        if queue.get(&book) != Some(&Stage::Months) {
            owed.push((book, truth.receipt(book)?.map(|(heads, _)| heads).unwrap_or_default()));
        }
    }
    Ok(owed)
}

fn at_the_shop(ledger: &Ledger, book: BookId) -> Result<bool, ExchangeError> {
    Ok(ledger.store().truth().is_acknowledged(book)?)
}

fn stopped(ledger: &Ledger) -> bool {
    let own = ledger.own_key().id().0;
    ledger.fleet().revoked.iter().any(|(id, _, _)| *id == own)
}

/// Half of the way there and back is taken as the answer's way.
fn learn_clock(
    ledger: &mut Ledger,
    parcel: &Parcel,
    sent_at: Stamp,
    now: Stamp,
) -> Result<Option<i64>, ExchangeError> {
    let trip = now.unix_ms().saturating_sub(sent_at.unix_ms());
    let Ok(hub) = i64::try_from(parcel.sender_ms) else { return Ok(None) };
    if !(0..=LONGEST_TRIP_MS).contains(&trip) {
        return Ok(None);
    }
    let off = hub.saturating_sub(sent_at.unix_ms().saturating_add(trip / 2));
    if memory::clock_off_ms(ledger.store())? != Some(off) {
        memory::set_clock_off_ms(ledger.store_mut(), off)?;
    }
    Ok(Some(off))
}

/// Keeps the cursors, and moves every comparison on. Returns what is still to be compared.
fn go_on(
    ledger: &mut Ledger,
    parcel: &Parcel,
    entries: &[ToldEntry],
    (before, lacking): (&Queue, &Lacking),
    now: Stamp,
) -> Result<Queue, ExchangeError> {
    let mut queue = before.clone();
    let mut cursors = parcel.cursors.iter().filter(|cursor| cursor.book.is_none());
    let cursor = cursors.next();
    let signal = parcel.reconcile.iter().any(|part| part.level == digests::WHOLE);
    // While a comparison goes on the shop may not know all trucks yet; but a cursor it does not find means that
    // nothing is certain any more.
    if signal && (cursor.is_none() || before.is_empty()) {
        queue = queue::everything(ledger, now)?;
        if cursor.is_none() {
            memory::drop_cursor(ledger.store_mut())?;
        }
    }
    if let Some(cursor) = cursor {
        memory::set_cursor(ledger.store_mut(), cursor)?;
        match cursors.next() {
            Some(since) => memory::set_receipt_cursor(ledger.store_mut(), since)?,
            None if !parcel.more => memory::set_receipt_cursor(ledger.store_mut(), cursor)?,
            None => {}
        }
    }
    for entry in entries.iter().filter(|entry| matches!(entry.fate, Fate::Waiting(_))) {
        queue.entry(entry.book).or_insert(Stage::Heads);
    }
    for refusal in parcel.refused.iter().filter(|refusal| refusal.code == 0) {
        queue.entry(BookId::Fleet).or_insert(Stage::Heads);
        for held in ledger.store().truth().by_id(refusal.id)? {
            queue.entry(held.row.book).or_insert(Stage::Heads);
        }
    }
    let stated: Vec<&BookId> = before.keys().take(STATED).collect();
    for BookHeads { book, heads, .. } in &parcel.heads {
        let truth = ledger.store().truth();
        let mut all_held = !lacking.books.contains(book);
        for head in heads {
            all_held &= truth.op_of(*book, head)?.is_some();
        }
        let next = match queue.get(book) {
            _ if all_held => None,
            Some(Stage::Heads) if stated.contains(&book) && !signal => Some(Stage::Months),
            _ => Some(Stage::Heads),
        };
        match next {
            Some(stage) => queue.insert(*book, stage),
            None => queue.remove(book),
        };
    }
    if lacking.somewhere {
        // The shop is sure of what is not here: nothing is certain any more.
        for (book, stage) in queue::everything(ledger, now)? {
            queue.entry(book).or_insert(stage);
        }
    }
    for part in parcel.reconcile.iter().filter(|part| part.level == digests::IDS) {
        let of_book =
            |other: &&crate::parcel::Reconcile| other.book == part.book && other.level == digests::MONTHS;
        let months = parcel.reconcile.iter().find(of_book).map(|months| months.buckets.as_slice());
        let parts = |buckets: &[crate::parcel::Bucket]| buckets.iter().map(|bucket| bucket.part).collect();
        let (months, ids) = (parts(months.unwrap_or_default()), parts(&part.buckets));
        queue.insert(part.book, Stage::Ids { months, ids });
    }
    if entries.iter().any(|entry| entry.book == BookId::Fleet && entry.fate == Fate::Admitted) {
        for truck in follow::along(ledger)? {
            queue.entry(book_of_now(truck, now)).or_insert(Stage::Heads);
        }
    }
    Ok(queue)
}
