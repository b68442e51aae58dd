//! A phone's request to the hub: what the shop has not acknowledged, and how far this phone has the shop's.

use std::collections::BTreeSet;

use sumpbook_trade::{Entry, Fact, Stamp, TruckId};

use super::coverage::{beyond, since};
use super::invite::{book_of_now, stamped};
use super::pages::{Room, packed};
use super::queue::{self, Queue, STATED, Stage};
use super::{ExchangeError, digests, follow, memory};
use crate::book::BookId;
use crate::gate::{ChangeHash, PublicKey};
use crate::ledger::Ledger;
use crate::parcel::{BookHeads, EnrolmentRequest, Link, Parcel, Reconcile, Run, limits, pack, seal};
use crate::store::{HeldEntry, StoreError, Truth};

/// Heads of one book that are stated: left out, they say less, never more.
const MOST_HEADS: usize = limits::HEADS as usize;

/// Of what came since the shop was heard so many are named one by one, and beyond them fewer.
const DENSE: usize = 16;

/// A request, ready to be sent. Nothing was written for it: it can be dropped and made anew.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Request {
    /// The sealed parcel.
    pub bytes: Vec<u8>,
    /// What the answer will link to.
    pub digest: [u8; 32],
    /// Entries in it.
    pub entries: usize,
    /// It has no room for all: another request is to follow.
    pub more: bool,
    /// It asks for this phone to be let in.
    pub asks: bool,
    /// It states what is held here, so that what was lost is found.
    pub compares: bool,
}

/// Makes the next request. `challenge` is what the hub gave for it.
///
/// Entries are those the newest receipt does not cover, whoever wrote them, the fleet's book first, each after
/// its predecessors, as many as one parcel takes. A phone that is not let in yet only asks.
///
/// # Errors
/// As any read, and when the parcel cannot be sealed.
pub fn request(ledger: &mut Ledger, challenge: [u8; 16], now: Stamp) -> Result<Request, ExchangeError> {
    // Which life of the hub this phone last met is the phone's own matter.
    let mut parcel = Parcel { link: Link::Challenge(challenge), epoch: [0; 8], ..stamped(ledger, now)? };
    let own = ledger.own_key();
    let enrolled = ledger.key(own.id()).is_some();
    if !enrolled {
        let key = own.public();
        parcel.enrolment =
            memory::asking(ledger.store())?.map(|(code, name)| EnrolmentRequest { key, code, name });
    }
    let queue = queue::open(ledger, now)?;
    let truth = ledger.store().truth();
    let mut more = false;
    if enrolled {
        let mut rows = owed(ledger, &queue)?;
        rows.sort_by_key(|held| (held.row.book, held.n));
        let mut room = Room::of_request();
        let fits = rows.iter().take_while(|held| room.takes(held)).count();
        more = fits < rows.len();
        if more {
            let own = own.id();
            // Whoever floods a book must not keep this phone's own entries from the shop.
            rows.sort_by_key(|held| (held.row.actor.key() != own, held.row.book, held.n));
            let mut room = Room::of_request();
            let fits = rows.iter().take_while(|held| room.takes(held)).count();
            rows.truncate(fits);
        }
        parcel.runs = packed(&truth, rows);
        if memory::is_stranger(ledger.store())? {
            let mut shown: Vec<Run> = shown(&truth, &own.public())?.into_iter().collect();
            shown.append(&mut parcel.runs);
            parcel.runs = shown;
        }
    }
    parcel.more = more;
    if enrolled {
        parcel.program = memory::program_to_tell(ledger.store())?;
    }
    if let Some(cursor) = memory::cursor(ledger.store())? {
        parcel.cursors = vec![cursor];
        parcel.cursors.extend(memory::receipt_cursor(ledger.store())?.filter(|since| *since != cursor));
        parcel.cursors.push(follow::digest(&follow::own(ledger)?));
    }
    let heard = truth.last_carried(ledger.root().shop.id().0)?;
    state(&truth, &queue, heard, &mut parcel)?;
    let sealed = seal(&parcel, own)?;
    Ok(Request {
        bytes: sealed.wire,
        digest: sealed.digest,
        entries: usize::try_from(parcel.entries()).unwrap_or(usize::MAX),
        more,
        asks: parcel.enrolment.is_some(),
        compares: !queue.is_empty(),
    })
}

/// Notes that the hub answered that it does not know this phone. When the shop once let it in (the hub was set
/// back to before that), the next request shows the shop's own entry that says so.
///
/// # Errors
/// As any write.
pub fn not_known(ledger: &mut Ledger) -> Result<(), ExchangeError> {
    Ok(memory::set_stranger(ledger.store_mut(), true)?)
}

/// This phone is to hold the books of these trucks too, from its next exchange on.
///
/// # Errors
/// As any write.
pub fn follow_trucks(ledger: &mut Ledger, trucks: &[TruckId], now: Stamp) -> Result<(), ExchangeError> {
    let known = follow::own(ledger)?;
    let new: BTreeSet<TruckId> = trucks.iter().copied().filter(|truck| !known.contains(truck)).collect();
    memory::follow(ledger.store_mut(), &trucks.iter().copied().collect())?;
    let mut queue = queue::open(ledger, now)?;
    queue.extend(new.into_iter().map(|truck| (book_of_now(truck, now), Stage::Heads)));
    Ok(queue::keep(ledger.store_mut(), &queue)?)
}

/// What the shop lacks as far as this phone can know it.
fn owed(ledger: &Ledger, queue: &Queue) -> Result<Vec<HeldEntry>, StoreError> {
    let truth = ledger.store().truth();
    let forgot = memory::cursor(ledger.store())?.is_none()
        && truth.receipt(BookId::Fleet)?.is_none()
        && !truth.heads(BookId::Fleet)?.is_empty();
    let mut rows = Vec::new();
    for book in truth.unacknowledged_books()? {
        match queue.get(&book) {
            // Nothing is known of what the shop has: that comes first, else years would be sent again.
            Some(Stage::Heads) if forgot => {}
            Some(Stage::Months) => {}
            Some(Stage::Ids { months, ids }) => rows.extend(beside(&truth, book, months, ids)?),
            Some(Stage::Heads) | None => {
                let acknowledged = truth.receipt(book)?.map(|(heads, _)| heads).unwrap_or_default();
                rows.extend(beyond(&truth, book, &acknowledged)?);
            }
        }
    }
    Ok(rows)
}

/// The entries of these months that are here and not among the hub's.
fn beside(
    truth: &Truth<'_>,
    book: BookId,
    months: &[u64],
    ids: &[u64],
) -> Result<Vec<HeldEntry>, StoreError> {
    let theirs: BTreeSet<u64> = ids.iter().copied().collect();
    let mut rows = Vec::new();
    for (month, hash) in truth.hashes_by_month(book)? {
        if months.contains(&month) && !theirs.contains(&digests::id(hash)) {
            rows.extend(truth.by_hash(&hash)?);
        }
    }
    Ok(rows)
}

/// States what is held here of the first books of the queue: each as it stood when the shop's last entry came,
/// which the shop very likely knows, and what came since by its ids, densest at the newest. So a book that went on
/// on both sides is mostly settled by one answer.
fn state(truth: &Truth<'_>, queue: &Queue, heard: i64, parcel: &mut Parcel) -> Result<(), StoreError> {
    for (book, stage) in queue.iter().take(STATED) {
        match stage {
            Stage::Heads => {
                let (mut heads, newer) = since(truth, *book, heard)?;
                heads.truncate(MOST_HEADS);
                // The shop has them or it has not: the beginning of a hash says as much.
                let prefixes = heads.into_iter().map(ChangeHash::prefix).collect();
                parcel.heads.push(BookHeads { book: *book, heads: Vec::new(), prefixes });
                if !newer.is_empty() {
                    let buckets = digests::named(sampled(&newer));
                    parcel.reconcile.push(Reconcile { book: *book, level: digests::IDS, buckets });
                }
            }
            Stage::Months => parcel.reconcile.push(digests::months(truth, *book)?),
            Stage::Ids { ids, .. } => {
                let mut lacking = Vec::new();
                for id in ids {
                    if truth.by_prefix(*book, id.to_be_bytes())?.is_none() {
                        lacking.push(*id);
                    }
                }
                let buckets = digests::named(lacking.into_iter());
                parcel.reconcile.push(Reconcile { book: *book, level: digests::WANTED, buckets });
            }
        }
    }
    Ok(())
}

/// The ids of the newest, each; then in steps of an eighth of the way back, so that what is sent although the shop
/// has it is at most an eighth of what it lacks.
fn sampled(newer: &[ChangeHash]) -> impl Iterator<Item = u64> {
    let mut at = 0usize;
    std::iter::from_fn(move || {
        let id = newer.get(at).map(|hash| digests::id(*hash))?;
        at = at.saturating_add(if at < DENSE { 1 } else { (at / 8).max(1) });
        Some(id)
    })
}

/// The shop's own entry that lets this key in, its predecessors named whole: so its signature can be checked by
/// a hub that holds none of them.
fn shown(truth: &Truth<'_>, key: &PublicKey) -> Result<Option<Run>, StoreError> {
    for held in truth.of_book(BookId::Fleet)? {
        if let Ok(Entry { fact: Fact::DeviceEnrolled(device), .. }) = Entry::from_payload(&held.row.payload)
            && device.key.0 == key.bytes()
        {
            return Ok(pack([held.row], |_, _| true).into_iter().next());
        }
    }
    Ok(None)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_newest_are_named_one_by_one_and_older_ones_in_steps_of_an_eighth() {
        let newer: Vec<ChangeHash> = (0..1_000u32)
            .map(|n| {
                let mut hash = [0; 32];
                hash[..4].copy_from_slice(&n.to_be_bytes());
                ChangeHash(hash)
            })
            .collect();
        let places: Vec<u64> = sampled(&newer).map(|id| id >> 32).collect();
        assert_eq!(places[..20], [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 18, 20, 22]);
        assert!(places.windows(2).all(|two| two[1] - two[0] <= (two[0] / 8).max(1)), "{places:?}");
        assert!(places.len() < 60, "{}", places.len());
        assert_eq!(sampled(&newer[..3]).count(), 3);
    }
}
