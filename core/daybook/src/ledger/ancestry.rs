//! Who had seen what: read from the graph, never from clocks.

use std::collections::{BTreeMap, HashSet};

use super::LedgerError;
use crate::book::BookId;
use crate::gate::ChangeHash;
use crate::store::{HeldEntry, Truth};

/// Answers questions about ancestry within one store, remembering what it walked.
#[derive(Default)]
pub struct Reach {
    whole: bool,
    below: BTreeMap<(BookId, Vec<ChangeHash>), HashSet<ChangeHash>>,
}

impl Reach {
    /// One that walks everything below some heads once and keeps it: for asking about many changes.
    pub(super) fn whole() -> Reach {
        Reach { whole: true, ..Reach::default() }
    }

    /// Whether `older` is `newer` or among what `newer`'s signer had seen. Both of one book.
    ///
    /// Each change follows the one before of its own hand, so what has seen a later one of the older's hand has
    /// seen the older. Ancestors were admitted before their descendants, so the walk stops at its number.
    ///
    /// # Errors
    /// As any read.
    pub fn had_seen(truth: &Truth<'_>, newer: &HeldEntry, older: &HeldEntry) -> Result<bool, LedgerError> {
        if newer.row.book != older.row.book {
            return Ok(false);
        }
        let mut open = vec![(newer.row.actor, newer.row.seq)];
        let mut seen = HashSet::new();
        while let Some((actor, seq)) = open.pop() {
            if actor == older.row.actor {
                if seq >= older.row.seq {
                    return Ok(true);
                }
                continue;
            }
            let Some(joint) = truth.joint(newer.row.book, actor, seq)? else { continue };
            if joint.n <= older.n || !seen.insert((actor, joint.seq)) {
                continue;
            }
            for dep in &joint.deps {
                let hand = truth.hand_of(dep)?.filter(|(n, _, _)| *n >= older.n);
                open.extend(hand.map(|(_, actor, seq)| (actor, seq)));
            }
        }
        Ok(false)
    }

    /// Whether these heads reach this change, given with its number here.
    ///
    /// # Errors
    /// As any read.
    pub fn reached(
        &mut self,
        truth: &Truth<'_>,
        book: BookId,
        heads: &[ChangeHash],
        (n, hash): (i64, ChangeHash),
    ) -> Result<bool, LedgerError> {
        if !self.whole {
            // Ancestors have lower numbers: of one change it is enough to look above it.
            return Ok(below(truth, heads, n)?.contains(&hash));
        }
        let key = (book, heads.to_vec());
        if let Some(below) = self.below.get(&key) {
            return Ok(below.contains(&hash));
        }
        let below = below(truth, heads, 0)?;
        let answer = below.contains(&hash);
        self.below.insert(key, below);
        Ok(answer)
    }
}

/// Everything the heads reach, themselves included, as far as it is here and down to a number.
fn below(truth: &Truth<'_>, heads: &[ChangeHash], down_to: i64) -> Result<HashSet<ChangeHash>, LedgerError> {
    let mut open = heads.to_vec();
    let mut seen = HashSet::new();
    while let Some(hash) = open.pop() {
        if seen.insert(hash)
            && let Some(held) = truth.by_hash(&hash)?
            && held.n > down_to
        {
            open.extend(held.row.deps);
        }
    }
    Ok(seen)
}
