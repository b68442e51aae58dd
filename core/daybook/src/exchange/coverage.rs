//! Which entries of a book some heads do not reach: what the holder of those heads lacks.

use std::collections::{BTreeMap, BTreeSet};

use crate::book::BookId;
use crate::gate::ChangeHash;
use crate::store::{HeldEntry, StoreError, Truth};

/// A book as it stood at number `n` and what came after it: the heads of then, ascending, and the entries since, the
/// newest first. It costs what came since.
///
/// # Errors
/// As any read.
pub(super) fn since(
    truth: &Truth<'_>,
    book: BookId,
    n: i64,
) -> Result<(Vec<ChangeHash>, Vec<ChangeHash>), StoreError> {
    let mut open: BTreeMap<i64, HeldEntry> = BTreeMap::new();
    for head in truth.heads(book)? {
        open.extend(truth.by_hash(&head)?.map(|held| (held.n, held)));
    }
    let mut newer = Vec::new();
    while let Some((_, held)) = open.pop_last() {
        if held.n <= n {
            open.insert(held.n, held);
            break;
        }
        for dep in &held.row.deps {
            open.extend(truth.by_hash(dep)?.map(|below| (below.n, below)));
        }
        newer.push(held.row.hash);
    }
    let mut heads: Vec<ChangeHash> = open.into_values().map(|held| held.row.hash).collect();
    heads.sort_unstable();
    Ok((heads, newer))
}

/// The entries of a book that `heads` do not reach, in admission order.
///
/// Heads that are not held here say nothing. The walk goes back from the newest and ends where only
/// reached entries are left, so it costs what is lacking and not what is held: every entry's number is
/// higher than those of the entries it names.
///
/// # Errors
/// As any read.
pub(super) fn beyond(
    truth: &Truth<'_>,
    book: BookId,
    heads: &[ChangeHash],
) -> Result<Vec<HeldEntry>, StoreError> {
    let own = truth.heads(book)?;
    // The usual case, and nothing is read for it.
    if own.iter().all(|head| heads.contains(head)) {
        return Ok(Vec::new());
    }
    let mut open: BTreeMap<i64, HeldEntry> = BTreeMap::new();
    let mut reached: BTreeSet<i64> = BTreeSet::new();
    let mut lacking = Vec::new();
    for head in heads {
        if let Some(held) = truth.by_hash(head)?.filter(|held| held.row.book == book) {
            reached.insert(held.n);
            open.insert(held.n, held);
        }
    }
    for head in own {
        if let Some(held) = truth.by_hash(&head)? {
            open.insert(held.n, held);
        }
    }
    // What is reached is always open too, so this ends when nothing else is left.
    while open.len() > reached.len() {
        let Some((n, held)) = open.pop_last() else { break };
        let is_reached = reached.remove(&n);
        for dep in &held.row.deps {
            if let Some(below) = truth.by_hash(dep)? {
                if is_reached {
                    reached.insert(below.n);
                }
                open.insert(below.n, below);
            }
        }
        if !is_reached {
            lacking.push(held);
        }
    }
    lacking.reverse();
    Ok(lacking)
}
