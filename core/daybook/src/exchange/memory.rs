//! What a folder remembers from one exchange to the next.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};
use sumpbook_trade::TruckId;
use sumpbook_trade::record::Digest;

use super::ExchangeError;
use crate::PROGRAM;
use crate::ledger::Ledger;
use crate::parcel::Cursor;
use crate::store::{Salvaged, Store, StoreError};

const CODE: &str = "enrolment-code";
const NAME: &str = "device-name";
const CURSOR: &str = "cursor";
const RECEIPT_CURSOR: &str = "receipt-cursor";
const CLOCK_OFF: &str = "clock-off";
pub(super) const QUEUE: &str = "to-compare";
const STRANGER: &str = "stranger-to-the-hub";
const FOLLOWED: &str = "followed-trucks";
const SENT: &str = "sent-parcels";
const EPOCHS: &str = "epochs";
const PROGRAM_TOLD: &str = "program-told";
const PENDING: &str = "pending-devices";
const SALVAGED: &str = "salvaged";

/// The most parcels remembered as sent; an answer to an older one still brings its entries.
const MOST_SENT: usize = 256;
/// The most epochs remembered: one for each time a hub was restored.
const MOST_EPOCHS: usize = 64;
/// The most phones that wait to be let in; the oldest gives way.
const MOST_PENDING: usize = 64;

/// A phone that asked to be let in, as the shop remembers it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub(super) struct Asked {
    pub(super) key: Digest,
    pub(super) code: [u8; 16],
    pub(super) name: String,
}

fn fixed<const N: usize>(store: &Store, name: &str) -> Result<Option<[u8; N]>, StoreError> {
    Ok(store.setting(name)?.and_then(|bytes| bytes.try_into().ok()))
}

fn list<const N: usize>(store: &Store, name: &str) -> Result<Vec<[u8; N]>, StoreError> {
    let bytes = store.setting(name)?.unwrap_or_default();
    Ok(bytes.chunks_exact(N).filter_map(|chunk| chunk.try_into().ok()).collect())
}

/// What was saved of a damaged file: where it is kept, entries it held, entries saved.
pub(crate) fn salvaged(store: &Store) -> Result<Option<Salvaged>, StoreError> {
    let kept = store.setting(SALVAGED)?.and_then(|bytes| serde_json::from_slice(&bytes).ok());
    Ok(kept.map(|(kept, held, saved)| Salvaged { kept, held, saved }))
}

pub(crate) fn set_salvaged(store: &mut Store, salvaged: &Salvaged) -> Result<(), StoreError> {
    let Salvaged { kept, held, saved } = salvaged;
    store.set_setting(SALVAGED, &serde_json::to_vec(&(kept, held, saved)).unwrap_or_default())
}

/// The shop has given what it had: nothing is left to be told.
pub(crate) fn forget_salvaged(store: &mut Store) -> Result<(), StoreError> {
    match store.setting(SALVAGED)? {
        // An empty one reads as none.
        Some(told) if !told.is_empty() => store.set_setting(SALVAGED, &[]),
        _ => Ok(()),
    }
}

/// The code and the name this phone asks under.
pub(crate) fn asking(store: &Store) -> Result<Option<([u8; 16], String)>, StoreError> {
    let name = store.setting(NAME)?.and_then(|bytes| String::from_utf8(bytes).ok());
    Ok(fixed(store, CODE)?.zip(name))
}

pub(crate) fn set_code(store: &mut Store, code: &[u8; 16]) -> Result<(), StoreError> {
    store.set_setting(CODE, code)
}

pub(crate) fn set_name(store: &mut Store, name: &str) -> Result<(), StoreError> {
    store.set_setting(NAME, name.as_bytes())
}

/// How far this phone has the hub's entries.
pub(super) fn cursor(store: &Store) -> Result<Option<Cursor>, StoreError> {
    kept_cursor(store, CURSOR)
}

pub(super) fn set_cursor(store: &mut Store, cursor: &Cursor) -> Result<(), StoreError> {
    keep_cursor(store, CURSOR, cursor)
}

/// Since when it has no receipts: behind the cursor while an answer of many pages comes in.
pub(super) fn receipt_cursor(store: &Store) -> Result<Option<Cursor>, StoreError> {
    kept_cursor(store, RECEIPT_CURSOR)
}

pub(super) fn set_receipt_cursor(store: &mut Store, cursor: &Cursor) -> Result<(), StoreError> {
    keep_cursor(store, RECEIPT_CURSOR, cursor)
}

fn kept_cursor(store: &Store, name: &str) -> Result<Option<Cursor>, StoreError> {
    let kept: Option<[u8; 16]> = fixed(store, name)?;
    Ok(kept.map(|bytes| {
        let whole = u128::from_be_bytes(bytes);
        Cursor { book: None, n: (whole >> 64) as u64, tag: (whole as u64).to_be_bytes() }
    }))
}

fn keep_cursor(store: &mut Store, name: &str, cursor: &Cursor) -> Result<(), StoreError> {
    if kept_cursor(store, name)? == Some(*cursor) {
        return Ok(());
    }
    let whole = (u128::from(cursor.n) << 64) | u128::from(u64::from_be_bytes(cursor.tag));
    store.set_setting(name, &whole.to_be_bytes())
}

/// Hub time minus this clock, milliseconds, as last learnt.
pub(crate) fn clock_off_ms(store: &Store) -> Result<Option<i64>, StoreError> {
    Ok(fixed(store, CLOCK_OFF)?.map(i64::from_be_bytes))
}

pub(crate) fn set_clock_off_ms(store: &mut Store, off_ms: i64) -> Result<(), StoreError> {
    store.set_setting(CLOCK_OFF, &off_ms.to_be_bytes())
}

/// Whether the hub said that it does not know this phone, which the shop once let in.
pub(super) fn is_stranger(store: &Store) -> Result<bool, StoreError> {
    Ok(store.setting(STRANGER)?.is_some_and(|kept| !kept.is_empty()))
}

pub(super) fn set_stranger(store: &mut Store, stranger: bool) -> Result<(), StoreError> {
    if is_stranger(store)? == stranger {
        return Ok(());
    }
    store.set_setting(STRANGER, if stranger { b"1" } else { b"" })
}

/// Forgets how far: after entries were lost out of a damaged file the shop must look at the heads alone.
pub(crate) fn drop_cursor(store: &mut Store) -> Result<(), StoreError> {
    store.set_setting(RECEIPT_CURSOR, &[])?;
    store.set_setting(QUEUE, &[])?;
    store.set_setting(CURSOR, &[])
}

/// The trucks whose books this phone is to hold.
pub(super) fn followed(store: &Store) -> Result<BTreeSet<TruckId>, StoreError> {
    Ok(list(store, FOLLOWED)?.into_iter().map(TruckId::from_bytes).collect())
}

pub(crate) fn follow(store: &mut Store, more: &BTreeSet<TruckId>) -> Result<(), StoreError> {
    let known = followed(store)?;
    if more.is_subset(&known) {
        return Ok(());
    }
    let bytes: Vec<u8> = known.union(more).flat_map(|truck| truck.bytes()).collect();
    store.set_setting(FOLLOWED, &bytes)
}

/// Whether this phone sent the parcel with this digest.
pub(super) fn was_sent(store: &Store, digest: &[u8; 32]) -> Result<bool, StoreError> {
    Ok(list(store, SENT)?.contains(digest))
}

pub(super) fn sent(store: &mut Store, digests: &[[u8; 32]]) -> Result<(), StoreError> {
    let mut known = list(store, SENT)?;
    known.extend(digests);
    let from = known.len().saturating_sub(MOST_SENT);
    store.set_setting(SENT, &known.split_off(from).concat())
}

/// The epochs of the hub, the newest last.
pub(super) fn epochs(store: &Store) -> Result<Vec<[u8; 8]>, StoreError> {
    list(store, EPOCHS)
}

pub(super) fn set_epochs(store: &mut Store, mut epochs: Vec<[u8; 8]>) -> Result<(), StoreError> {
    let from = epochs.len().saturating_sub(MOST_EPOCHS);
    store.set_setting(EPOCHS, &epochs.split_off(from).concat())
}

/// The epoch to write into a parcel: the shop's own, or the one a phone last met.
pub(super) fn epoch(ledger: &mut Ledger) -> Result<[u8; 8], ExchangeError> {
    if let Some(epoch) = epochs(ledger.store())?.last() {
        return Ok(*epoch);
    }
    if !is_shop(ledger) {
        return Ok([0; 8]);
    }
    let mut epoch = [0; 8];
    getrandom::fill(&mut epoch)?;
    set_epochs(ledger.store_mut(), vec![epoch])?;
    Ok(epoch)
}

/// The version of this program, while the hub in its present life was not told it.
pub(super) fn program_to_tell(store: &Store) -> Result<Option<String>, StoreError> {
    let told = store.setting(PROGRAM_TOLD)?;
    Ok((told != Some(program_now(store)?)).then(|| PROGRAM.to_owned()))
}

/// The hub answered what carried the version.
pub(super) fn program_told(store: &mut Store) -> Result<(), StoreError> {
    let told = program_now(store)?;
    store.set_setting(PROGRAM_TOLD, &told)
}

/// The version, and the life of the hub it is told to: a hub set back to before it was told is told again.
fn program_now(store: &Store) -> Result<Vec<u8>, StoreError> {
    let epoch = epochs(store)?.last().copied().unwrap_or_default();
    Ok([&epoch[..], PROGRAM.as_bytes()].concat())
}

/// A new life of the shop, after it was restored: phones that meet it look for what it lost.
pub(super) fn begin_epoch(ledger: &mut Ledger) -> Result<[u8; 8], ExchangeError> {
    let mut epoch = [0; 8];
    getrandom::fill(&mut epoch)?;
    let mut known = epochs(ledger.store())?;
    known.push(epoch);
    set_epochs(ledger.store_mut(), known)?;
    Ok(epoch)
}

/// Whether this folder is the shop's.
pub(super) fn is_shop(ledger: &Ledger) -> bool {
    ledger.own_key().id() == ledger.root().shop.id()
}

/// The phones that asked to be let in, oldest first.
pub(super) fn asked(store: &Store) -> Result<Vec<Asked>, ExchangeError> {
    Ok(match store.setting(PENDING)? {
        Some(bytes) => serde_json::from_slice(&bytes)?,
        None => Vec::new(),
    })
}

pub(super) fn set_asked(store: &mut Store, mut asked: Vec<Asked>) -> Result<(), ExchangeError> {
    let from = asked.len().saturating_sub(MOST_PENDING);
    let bytes = serde_json::to_vec(&asked.split_off(from))?;
    Ok(store.set_setting(PENDING, &bytes)?)
}
