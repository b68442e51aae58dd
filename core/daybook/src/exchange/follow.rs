//! Which trucks' books a phone is to hold: said once, then only compared by a digest.
//!
//! The phone says it by stating heads; the hub remembers it for each device. With every request the phone sends
//! eight bytes over its own list, so a hub that remembers another one (it was set back, or the shop gave the phone
//! a truck) is noticed at once.

use std::collections::BTreeSet;

use sha2::{Digest, Sha256};
use sumpbook_trade::record::SetRegistered;
use sumpbook_trade::{Entry, Fact, TruckId};

use super::memory;
use crate::book::BookId;
use crate::gate::KeyId;
use crate::ledger::Ledger;
use crate::parcel::Cursor;
use crate::store::{Store, StoreError};

/// The most trucks the hub remembers for one device.
const MOST: usize = 4_096;
/// The trucks followed only because a set that is now on another truck was on them.
const ALONG: &str = "followed-for-their-sets";

/// The trucks whose books this phone holds or is to hold.
pub(super) fn own(ledger: &Ledger) -> Result<BTreeSet<TruckId>, StoreError> {
    let mut trucks = memory::followed(ledger.store())?;
    for book in ledger.store().truth().books()? {
        trucks.extend(truck_of(book));
    }
    Ok(trucks)
}

/// The list as it travels with every request: in the place of a cursor of the fleet's book the count of trucks
/// and a digest over them.
pub(super) fn digest(trucks: &BTreeSet<TruckId>) -> Cursor {
    let mut hash = Sha256::new();
    for truck in trucks {
        hash.update(truck.bytes());
    }
    let [a, b, c, d, e, f, g, h, ..] = <[u8; 32]>::from(hash.finalize());
    Cursor { book: Some(BookId::Fleet), n: trucks.len() as u64, tag: [a, b, c, d, e, f, g, h] }
}

/// The trucks the hub remembers for a device.
pub(super) fn remembered(store: &Store, device: KeyId) -> Result<BTreeSet<TruckId>, StoreError> {
    let bytes = store.setting(&name(device))?.unwrap_or_default();
    let trucks = bytes.chunks_exact(16).filter_map(|chunk| chunk.try_into().ok());
    Ok(trucks.map(TruckId::from_bytes).collect())
}

/// Remembers more trucks for a device, and returns all of them.
pub(super) fn remember(
    store: &mut Store,
    device: KeyId,
    more: &BTreeSet<TruckId>,
) -> Result<BTreeSet<TruckId>, StoreError> {
    let mut trucks = remembered(store, device)?;
    let before = trucks.len();
    trucks.extend(more);
    while trucks.len() > MOST {
        trucks.pop_last();
    }
    if trucks.len() > before {
        let bytes: Vec<u8> = trucks.iter().flat_map(|truck| truck.bytes()).collect();
        store.set_setting(&name(device), &bytes)?;
    }
    Ok(trucks)
}

/// Trucks to follow because a set now on a followed one was on them before; remembered as such, so that their
/// own sets bring no further ones. Returns those that are new.
pub(super) fn along(ledger: &mut Ledger) -> Result<BTreeSet<TruckId>, StoreError> {
    let followed = memory::followed(ledger.store())?;
    let bytes = ledger.store().setting(ALONG)?.unwrap_or_default();
    let mut along: BTreeSet<TruckId> =
        bytes.chunks_exact(16).filter_map(|c| c.try_into().ok()).map(TruckId::from_bytes).collect();
    let sets: BTreeSet<_> = followed
        .difference(&along)
        .filter_map(|truck| ledger.fleet().set_on(*truck))
        .map(|set| set.set)
        .collect();
    let mut new = BTreeSet::new();
    for held in ledger.store().truth().of_book(BookId::Fleet)? {
        if let Ok(Entry { fact: Fact::SetRegistered(SetRegistered { set, on: Some(on), .. }), .. }) =
            Entry::from_payload(&held.row.payload)
            && sets.contains(&set)
            && !followed.contains(&on)
        {
            new.insert(on);
        }
    }
    if !new.is_empty() {
        along.extend(&new);
        let bytes: Vec<u8> = along.iter().flat_map(|truck| truck.bytes()).collect();
        ledger.store_mut().set_setting(ALONG, &bytes)?;
        memory::follow(ledger.store_mut(), &new)?;
    }
    Ok(new)
}

/// The truck of a book; none of the fleet's.
pub(super) fn truck_of(book: BookId) -> Option<TruckId> {
    match book {
        BookId::Fleet => None,
        BookId::Truck { truck, .. } => Some(truck),
    }
}

fn name(device: KeyId) -> String {
    format!("follows/{:016x}", u64::from_be_bytes(device.0))
}
