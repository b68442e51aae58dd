//! Making a file of everything the shop has not acknowledged.

use std::collections::BTreeSet;

use sumpbook_trade::{Entry, Fact, Stamp};

use super::coverage::beyond;
use super::invite::{book_of_now, spread, stamped};
use super::pages::{FEW, file, pages};
use super::{ExchangeError, memory};
use crate::PROGRAM;
use crate::book::BookId;
use crate::gate::{KeyId, PublicKey};
use crate::ledger::Ledger;
use crate::parcel::{BookHeads, EnrolmentRequest};
use crate::store::HeldEntry;

/// A file to hand over. Signed, not secret: whoever has it can read it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HandOver {
    /// The file.
    pub bytes: Vec<u8>,
    /// Entries in it that the shop has not acknowledged.
    pub entries: usize,
    /// Of those, how many this device wrote itself.
    pub own: usize,
    /// Fleet entries that go along so that others know who signed.
    pub along: usize,
}

/// Makes a file of all entries that the newest receipt does not cover, whoever wrote them, with their
/// signers' enrolments. With nothing new it still carries the cursor and the heads, and an answer to it
/// brings what is new at the shop.
///
/// # Errors
/// As any read, and when the file cannot be sealed.
pub fn hand_over(ledger: &mut Ledger, now: Stamp) -> Result<HandOver, ExchangeError> {
    let own = ledger.own_key().id();
    let truth = ledger.store().truth();
    let (mut rows, mut heads) = (Vec::new(), Vec::new());
    let mut followed = memory::followed(ledger.store())?;
    for book in truth.books()? {
        let acknowledged = truth.receipt(book)?.map(|(heads, _)| heads).unwrap_or_default();
        rows.extend(beyond(&truth, book, &acknowledged)?);
        heads.push(BookHeads { book, heads: truth.heads(book)?, prefixes: vec![] });
        if let BookId::Truck { truck, .. } = book {
            followed.remove(&truck);
        }
    }
    heads.extend(followed.into_iter().map(|truck| BookHeads {
        book: book_of_now(truck, now),
        heads: vec![],
        prefixes: vec![],
    }));
    let entries = rows.len();
    let own_count = rows.iter().filter(|held| held.row.actor.key() == own).count();
    let along = enrolments(ledger, &rows)?;
    let along_count = along.len();
    rows.extend(along);
    let pages = pages(&truth, rows, FEW);
    let mut fresh = stamped(ledger, now)?;
    // In every parcel, so that one damaged parcel does not make strangers of the others.
    fresh.enrolment = memory::asking(ledger.store())?
        .filter(|_| !memory::is_shop(ledger))
        .map(|(code, name)| EnrolmentRequest { key: ledger.own_key().public(), code, name });
    let mut parcels = spread(&fresh, pages, heads);
    if let Some(first) = parcels.first_mut() {
        first.cursors = memory::cursor(ledger.store())?.into_iter().collect();
        // Nobody knows whether an earlier file arrived.
        first.program = (!memory::is_shop(ledger)).then(|| PROGRAM.to_owned());
    }
    let (bytes, digests) = file(parcels, ledger.own_key())?;
    memory::sent(ledger.store_mut(), &digests)?;
    Ok(HandOver { bytes, entries, own: own_count, along: along_count })
}

/// The enrolments of those who signed these rows, as far as they are not among them.
fn enrolments(ledger: &Ledger, rows: &[HeldEntry]) -> Result<Vec<HeldEntry>, ExchangeError> {
    let signers: BTreeSet<KeyId> = rows.iter().map(|held| held.row.actor.key()).collect();
    let there: BTreeSet<i64> = rows.iter().map(|held| held.n).collect();
    let mut along = Vec::new();
    if signers.iter().all(|signer| *signer == ledger.root().shop.id()) {
        return Ok(along);
    }
    for held in ledger.store().truth().of_book(BookId::Fleet)? {
        let Ok(Entry { fact: Fact::DeviceEnrolled(device), .. }) = Entry::from_payload(&held.row.payload)
        else {
            continue;
        };
        let key = PublicKey::from_bytes(&device.key.0).map(|key| key.id());
        if key.is_ok_and(|key| signers.contains(&key)) && !there.contains(&held.n) {
            along.push(held);
        }
    }
    Ok(along)
}
