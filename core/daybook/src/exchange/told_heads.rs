//! The heads an answer tells, each found here by the beginning of its hash.

use std::collections::{BTreeMap, BTreeSet};

use crate::book::BookId;
use crate::gate::ChangeHash;
use crate::parcel::{BookHeads, Parcel};
use crate::store::{StoreError, Truth};

/// What could not be found.
#[derive(Default)]
pub(super) struct Lacking {
    /// Books with a head that is not here.
    pub(super) books: BTreeSet<BookId>,
    /// A head was told without its book, because this phone should hold it, and is not here.
    pub(super) somewhere: bool,
}

/// Names every head of the answer whole, as far as it is here. Once its entries have come in.
pub(super) fn complete(truth: &Truth<'_>, parcel: &mut Parcel) -> Result<Lacking, StoreError> {
    let mut lacking = Lacking::default();
    for BookHeads { book, heads, prefixes } in &mut parcel.heads {
        for prefix in std::mem::take(prefixes) {
            match truth.by_prefix(*book, prefix)? {
                Some(hash) => heads.push(hash),
                None => {
                    lacking.books.insert(*book);
                }
            }
        }
        heads.sort_unstable();
    }
    let mut held: BTreeMap<BookId, Vec<ChangeHash>> = BTreeMap::new();
    for prefix in std::mem::take(&mut parcel.held_heads) {
        match truth.by_prefix_anywhere(prefix)? {
            Some((book, hash)) => held.entry(book).or_default().push(hash),
            None => lacking.somewhere = true,
        }
    }
    for (book, mut heads) in held {
        heads.sort_unstable();
        parcel.heads.push(BookHeads { book, heads, prefixes: Vec::new() });
    }
    Ok(lacking)
}
