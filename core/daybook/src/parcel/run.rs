//! Entries packed into runs, and runs unpacked into rows.
//!
//! Within a run each later entry has its predecessor as its only dep, so neither numbers nor deps travel
//! for it. The first entry's deps are named by how far back they stand among the parcel's own entries of
//! that book, or by the beginning of their hash.

use std::collections::HashMap;

use sumpbook_trade::EntryId;

use super::message::{Dep, Run, RunEntry};
use crate::book::{BookId, DocumentError, EntryRow};
use crate::gate::ChangeHash;
use crate::gate::change::next_op;

/// Packs rows into runs: the fleet's book first, within a book the order given.
///
/// Rows must come with every predecessor before its followers, as the store's admission order has them.
/// `whole` says which predecessors to name by all 32 bytes, because their first 8 name more than one
/// change of the book; it is almost always `|_, _| false`.
pub fn pack(
    rows: impl IntoIterator<Item = EntryRow>,
    whole: impl Fn(BookId, ChangeHash) -> bool,
) -> Vec<Run> {
    let mut rows: Vec<EntryRow> = rows.into_iter().collect();
    rows.sort_by_key(|row| row.book);
    let mut runs: Vec<Run> = Vec::new();
    let mut positions: HashMap<(BookId, ChangeHash), u64> = HashMap::new();
    let mut previous: Option<(BookId, ChangeHash, u64)> = None;
    for row in rows {
        let same_book = previous.filter(|(book, ..)| *book == row.book);
        let position = same_book.map_or(0, |(_, _, position)| position.saturating_add(1));
        let entry = RunEntry { id: row.id, payload: row.payload, signature: row.signature };
        let follows = same_book.is_some_and(|(_, hash, _)| row.deps == [hash]);
        match runs.last_mut() {
            Some(run) if follows && continues(run, row.actor, row.seq) => run.entries.push(entry),
            _ => {
                let name = |dep: &ChangeHash| match positions.get(&(row.book, *dep)) {
                    Some(at) => Dep::Back(position.saturating_sub(*at)),
                    None if whole(row.book, *dep) => Dep::Whole(*dep),
                    None => Dep::Prefix(dep.prefix()),
                };
                let deps = row.deps.iter().map(name).collect();
                runs.push(Run { book: row.book, actor: row.actor, seq: row.seq, deps, entries: vec![entry] });
            }
        }
        positions.insert((row.book, row.hash), position);
        previous = Some((row.book, row.hash, position));
    }
    runs
}

fn continues(run: &Run, actor: crate::gate::Actor, seq: u64) -> bool {
    run.actor == actor && run.seq.checked_add(run.entries.len() as u64) == Some(seq)
}

/// A change the receiver holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Known {
    /// Its name.
    pub hash: ChangeHash,
    /// The number of its op.
    pub op: u64,
}

/// What became of one entry of a parcel.
#[derive(Debug)]
pub enum Unpacked {
    /// A row, with its hash and op worked out; nothing is verified yet.
    Row(EntryRow),
    /// A predecessor is not held, or its prefix names more than one.
    Missing {
        /// The book.
        book: BookId,
        /// The entry.
        id: EntryId,
        /// The predecessor's prefix; `None` when the parcel points before its own beginning.
        prefix: Option<[u8; 8]>,
    },
    /// Its change cannot be built.
    Unbuildable {
        /// The entry.
        id: EntryId,
        /// Why.
        error: DocumentError,
    },
}

/// Where an earlier entry of the parcel ended up.
type Placed = Result<Known, Option<[u8; 8]>>;

/// Unpacks runs into rows, one result for each entry, in the parcel's order.
///
/// `known(book, dep)` gives the one change of that book that a [`Dep::Prefix`] or [`Dep::Whole`] names, and
/// nothing when there is none, or when a prefix names more than one; it is never asked for [`Dep::Back`].
/// An entry that follows a missing one is missing for the same reason.
pub fn unpack(
    runs: impl IntoIterator<Item = Run>,
    known: impl Fn(BookId, &Dep) -> Option<Known>,
) -> Vec<Unpacked> {
    let mut placed: HashMap<BookId, Vec<Placed>> = HashMap::new();
    let mut out = Vec::new();
    for run in runs {
        let before = placed.entry(run.book).or_default();
        let mut deps: Result<Vec<Known>, Option<[u8; 8]>> =
            run.deps.iter().map(|dep| find(run.book, dep, before, &known)).collect();
        let mut seq = run.seq;
        for entry in run.entries {
            let (place, result) = unpack_one(run.book, run.actor, seq, &deps, entry);
            before.push(place);
            out.push(result);
            deps = place.map(|known| vec![known]);
            seq = seq.saturating_add(1);
        }
    }
    out
}

fn find(
    book: BookId,
    dep: &Dep,
    before: &[Placed],
    known: &impl Fn(BookId, &Dep) -> Option<Known>,
) -> Placed {
    match dep {
        Dep::Back(back) => usize::try_from(*back)
            .ok()
            .and_then(|back| before.len().checked_sub(back))
            .and_then(|at| before.get(at))
            .copied()
            .unwrap_or(Err(None)),
        Dep::Prefix(prefix) => {
            known(book, dep).filter(|found| found.hash.prefix() == *prefix).ok_or(Some(*prefix))
        }
        Dep::Whole(hash) => known(book, dep).filter(|found| found.hash == *hash).ok_or(Some(hash.prefix())),
    }
}

fn unpack_one(
    book: BookId,
    actor: crate::gate::Actor,
    seq: u64,
    deps: &Result<Vec<Known>, Option<[u8; 8]>>,
    entry: RunEntry,
) -> (Placed, Unpacked) {
    let deps = match deps {
        Ok(deps) => deps,
        Err(prefix) => return (Err(*prefix), Unpacked::Missing { book, id: entry.id, prefix: *prefix }),
    };
    let op = next_op(deps.iter().map(|dep| dep.op));
    let mut hashes: Vec<ChangeHash> = deps.iter().map(|dep| dep.hash).collect();
    hashes.sort_unstable();
    let mut row = EntryRow {
        hash: ChangeHash([0; 32]),
        book,
        actor,
        seq,
        deps: hashes,
        op,
        id: entry.id,
        payload: entry.payload,
        signature: entry.signature,
    };
    match row.change() {
        Ok(change) => {
            row.hash = change.hash;
            (Ok(Known { hash: row.hash, op }), Unpacked::Row(row))
        }
        Err(error) => (Err(None), Unpacked::Unbuildable { id: row.id, error }),
    }
}
