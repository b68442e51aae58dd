//! A book told by its months, and a month by its entries: how two that both lost something find what each lacks.

use std::collections::{BTreeMap, BTreeSet};

use sha2::{Digest, Sha256};

use crate::book::BookId;
use crate::gate::ChangeHash;
use crate::parcel::{Bucket, Reconcile, limits};
use crate::store::{StoreError, Truth};

/// Level of the whole book: part 0, a digest over its heads, which stand for everything below them.
pub(super) const WHOLE: u64 = 0;
/// Level of its months: months since year 0 of the entries' own times, a digest over their hashes.
pub(super) const MONTHS: u64 = 1;
/// Level of its entries: the first 8 bytes of the hash, and no digest. They are here.
pub(super) const IDS: u64 = 2;
/// Entries named in the same way that are not here and wanted.
pub(super) const WANTED: u64 = 3;

/// The whole book.
pub(super) fn whole(truth: &Truth<'_>, book: BookId) -> Result<Reconcile, StoreError> {
    let heads = truth.heads(book)?;
    let buckets = vec![Bucket { part: 0, count: heads.len() as u64, digest: digest(&heads) }];
    Ok(Reconcile { book, level: WHOLE, buckets })
}

/// The months of a book.
pub(super) fn months(truth: &Truth<'_>, book: BookId) -> Result<Reconcile, StoreError> {
    let mut by_month: BTreeMap<u64, Vec<ChangeHash>> = BTreeMap::new();
    for (month, hash) in truth.hashes_by_month(book)? {
        by_month.entry(month).or_default().push(hash);
    }
    let bucket = |(part, hashes): (u64, Vec<ChangeHash>)| Bucket {
        part,
        count: hashes.len() as u64,
        digest: digest(&hashes),
    };
    Ok(Reconcile { book, level: MONTHS, buckets: by_month.into_iter().map(bucket).collect() })
}

/// What differs between the months stated and those here: the months as they are here, then the entries of
/// them; a month that is not here at all stands there with none.
pub(super) fn differing(truth: &Truth<'_>, stated: &Reconcile) -> Result<Vec<Reconcile>, StoreError> {
    let here: BTreeMap<u64, Bucket> =
        months(truth, stated.book)?.buckets.into_iter().map(|b| (b.part, b)).collect();
    let theirs: BTreeMap<u64, Bucket> = stated.buckets.iter().map(|b| (b.part, *b)).collect();
    let parts: BTreeSet<u64> = here.keys().chain(theirs.keys()).copied().collect();
    let mut counts: BTreeMap<u64, u64> = BTreeMap::new();
    let mut room = limits::BUCKETS;
    for part in parts.into_iter().filter(|part| here.get(part) != theirs.get(part)) {
        let count = here.get(&part).map_or(0, |bucket| bucket.count);
        // As many whole months as one parcel names; the next comparison finds the others.
        if count > room {
            continue;
        }
        room -= count;
        counts.insert(part, count);
    }
    if counts.is_empty() {
        return Ok(Vec::new());
    }
    let entries = truth.hashes_by_month(stated.book)?.into_iter();
    let ids = entries.filter(|(month, _)| counts.contains_key(month)).map(|(_, hash)| id(hash));
    let ids = named(ids);
    let none = Bucket { part: 0, count: 0, digest: [0; 16] };
    let buckets =
        counts.into_keys().map(|part| here.get(&part).copied().unwrap_or(Bucket { part, ..none })).collect();
    Ok(vec![
        Reconcile { book: stated.book, level: MONTHS, buckets },
        Reconcile { book: stated.book, level: IDS, buckets: ids },
    ])
}

/// Entries as they are named at the last level.
pub(super) fn named(ids: impl Iterator<Item = u64>) -> Vec<Bucket> {
    ids.map(|part| Bucket { part, count: 1, digest: [0; 16] }).collect()
}

/// The number an entry is named by.
pub(super) fn id(hash: ChangeHash) -> u64 {
    u64::from_be_bytes(hash.prefix())
}

fn digest(hashes: &[ChangeHash]) -> [u8; 16] {
    let mut sha = Sha256::new();
    for hash in hashes {
        sha.update(hash.0);
    }
    let mut digest = [0; 16];
    for (to, from) in digest.iter_mut().zip(sha.finalize()) {
        *to = from;
    }
    digest
}
