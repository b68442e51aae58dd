//! The books a phone still has to compare with the shop's, and how far each comparison is.
//!
//! Only after something was lost, or when a truck is followed anew. First the heads of a book are stated: when the
//! hub holds any of them it knows what this phone lacks, and when this phone holds the hub's it knows what the hub
//! lacks. Only a book where neither is so goes on by digests of its months, then by its entries' ids.

use std::collections::BTreeMap;

use minicbor::data::Type;
use minicbor::{Decoder, Encoder};
use sumpbook_trade::Stamp;

use super::invite::book_of_now;
use super::{follow, memory};
use crate::book::BookId;
use crate::ledger::Ledger;
use crate::store::{Store, StoreError};

/// Books of which one request speaks; below the limit of a parcel.
pub(super) const STATED: usize = 60;

/// How far the comparison of one book is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Stage {
    /// Its heads are to be stated.
    Heads,
    /// Digests of its months are to be stated.
    Months,
    /// The hub told which months differ and which entries it has in them, each by the first 8 bytes of its hash.
    Ids { months: Vec<u64>, ids: Vec<u64> },
}

/// The books to compare.
pub(super) type Queue = BTreeMap<BookId, Stage>;

/// The queue as it stands; without a cursor nothing was ever compared, so every book is in it.
pub(super) fn open(ledger: &Ledger, now: Stamp) -> Result<Queue, StoreError> {
    let kept = ledger.store().setting(memory::QUEUE)?.and_then(|bytes| read(&bytes)).unwrap_or_default();
    match kept.is_empty() && memory::cursor(ledger.store())?.is_none() {
        true => everything(ledger, now),
        false => Ok(kept),
    }
}

/// Every book that is held or followed, its heads to be stated.
pub(super) fn everything(ledger: &Ledger, now: Stamp) -> Result<Queue, StoreError> {
    let mut followed = memory::followed(ledger.store())?;
    let mut queue = Queue::from([(BookId::Fleet, Stage::Heads)]);
    for book in ledger.store().truth().books()? {
        queue.insert(book, Stage::Heads);
        if let Some(truck) = follow::truck_of(book) {
            followed.remove(&truck);
        }
    }
    queue.extend(followed.into_iter().map(|truck| (book_of_now(truck, now), Stage::Heads)));
    Ok(queue)
}

/// Keeps the queue.
pub(super) fn keep(store: &mut Store, queue: &Queue) -> Result<(), StoreError> {
    let bytes = if queue.is_empty() { Vec::new() } else { write(queue) };
    if store.setting(memory::QUEUE)?.unwrap_or_default() == bytes {
        return Ok(());
    }
    store.set_setting(memory::QUEUE, &bytes)
}

fn write(queue: &Queue) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut e = Encoder::new(&mut bytes);
    // Writing to a Vec cannot fail.
    let _ = (|| {
        e.array(queue.len() as u64)?;
        for (book, stage) in queue {
            e.array(2)?.encode(book)?;
            match stage {
                Stage::Heads => e.u8(0)?.ok()?,
                Stage::Months => e.u8(1)?.ok()?,
                Stage::Ids { months, ids } => e.array(2)?.encode(months)?.encode(ids)?.ok()?,
            }
        }
        Ok::<(), minicbor::encode::Error<std::convert::Infallible>>(())
    })();
    bytes
}

/// `None` when the bytes are not of that form: then everything is compared once more.
fn read(bytes: &[u8]) -> Option<Queue> {
    let mut d = Decoder::new(bytes);
    let mut queue = Queue::new();
    for _ in 0..d.array().ok()?? {
        d.array().ok()?;
        let book = d.decode().ok()?;
        let stage = match d.datatype().ok()? {
            Type::Array => {
                d.array().ok()?;
                Stage::Ids { months: d.decode().ok()?, ids: d.decode().ok()? }
            }
            _ if d.u8().ok()? == 0 => Stage::Heads,
            _ => Stage::Months,
        };
        queue.insert(book, stage);
    }
    Some(queue)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_queue_is_read_as_it_was_kept() {
        let truck = sumpbook_trade::TruckId::from_bytes([1; 16]);
        let queue = Queue::from([
            (BookId::Fleet, Stage::Months),
            (
                BookId::Truck { truck, year: 2026 },
                Stage::Ids { months: vec![24_321], ids: vec![1, u64::MAX] },
            ),
            (BookId::Truck { truck, year: 2027 }, Stage::Heads),
        ]);
        assert_eq!(read(&write(&queue)), Some(queue));
        assert_eq!(read(b"\xff"), None);
    }
}
