//! A book's automerge document, put together again from its rows.

use std::collections::HashMap;

use automerge::Automerge;
use sumpbook_trade::EntryId;

use super::BookId;
use crate::gate::change::{self, Change, Parts};
use crate::gate::{Actor, ChangeError, ChangeHash, SignError, sign};

/// One admitted entry as the store keeps it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct EntryRow {
    /// The name of its change, as it was when the entry was admitted.
    pub hash: ChangeHash,
    /// The book it stands in.
    pub book: BookId,
    /// Who wrote it.
    pub actor: Actor,
    /// Its number among that actor's in this book, from 1.
    pub seq: u64,
    /// Its predecessors, strictly ascending.
    pub deps: Vec<ChangeHash>,
    /// The number of its op: one above the highest of its predecessors.
    pub op: u64,
    /// Its own name.
    pub id: EntryId,
    /// CBOR of what was recorded.
    pub payload: Vec<u8>,
    /// Ed25519 signature over place and payload.
    pub signature: [u8; 64],
}

impl EntryRow {
    /// The change this row stands for, built anew; its hash is not compared with the row's.
    ///
    /// # Errors
    /// When the op's number or the envelope cannot be written.
    pub fn change(&self) -> Result<Change, DocumentError> {
        let value = sign::cose(&self.payload, &self.signature)?;
        Ok(change::build(Parts {
            actor: self.actor,
            seq: self.seq,
            op: self.op,
            deps: &self.deps,
            id: self.id,
            value: &value,
        })?)
    }
}

/// Why rows are not a book.
#[derive(Debug, thiserror::Error)]
pub enum DocumentError {
    /// A row's change cannot be built.
    #[error(transparent)]
    Change(#[from] ChangeError),
    /// A row's envelope cannot be written.
    #[error(transparent)]
    Envelope(#[from] SignError),
    /// The change built from a row is not the one that was admitted.
    #[error("entry {id} was admitted as {stored} and is now {built}")]
    Hash {
        /// The entry.
        id: EntryId,
        /// The hash stored with it.
        stored: ChangeHash,
        /// The hash of what its fields give now.
        built: ChangeHash,
    },
    /// A row of another book among them.
    #[error("entry {0} stands in another book")]
    OtherBook(EntryId),
    /// A row whose predecessors, or whose actor's previous entry, do not come before it.
    #[error("entry {0} does not follow what stands before it")]
    Order(EntryId),
    /// Automerge would not take the changes.
    #[error("automerge: {0}")]
    Apply(#[from] automerge::AutomergeError),
}

/// Puts a book's document together from its rows, in the order they were admitted.
///
/// The order is checked first, because automerge is known to fall over on graphs in which an actor's
/// change does not follow its previous one.
///
/// # Errors
/// The first row that does not fit; nothing is put together in that case.
pub fn rebuild(rows: impl IntoIterator<Item = EntryRow>) -> Result<Automerge, DocumentError> {
    let mut book = None;
    let mut known: HashMap<ChangeHash, u64> = HashMap::new();
    let mut last: HashMap<Actor, (u64, ChangeHash)> = HashMap::new();
    let mut changes = Vec::new();
    for row in rows {
        if *book.get_or_insert(row.book) != row.book {
            return Err(DocumentError::OtherBook(row.id));
        }
        if !follows(&row, &known, last.get(&row.actor)) {
            return Err(DocumentError::Order(row.id));
        }
        let built = row.change()?;
        if built.hash != row.hash {
            return Err(DocumentError::Hash { id: row.id, stored: row.hash, built: built.hash });
        }
        known.insert(row.hash, row.op);
        last.insert(row.actor, (row.seq, row.hash));
        changes.push(built.automerge);
    }
    let mut document = Automerge::new();
    document.apply_changes(changes)?;
    Ok(document)
}

fn follows(row: &EntryRow, known: &HashMap<ChangeHash, u64>, last: Option<&(u64, ChangeHash)>) -> bool {
    let ops: Option<Vec<u64>> = row.deps.iter().map(|dep| known.get(dep).copied()).collect();
    let own = match last {
        None => row.seq == 1,
        Some((seq, hash)) => row.seq.checked_sub(1) == Some(*seq) && row.deps.contains(hash),
    };
    own && row.deps.is_sorted_by(|a, b| a < b)
        && !known.contains_key(&row.hash)
        && ops.is_some_and(|ops| change::next_op(ops) == row.op)
}

/// A saved document of these rows: an export that any automerge opens.
///
/// # Errors
/// As [`rebuild`].
pub fn export(rows: impl IntoIterator<Item = EntryRow>) -> Result<Vec<u8>, DocumentError> {
    Ok(rebuild(rows)?.save())
}

#[cfg(test)]
mod tests {
    use automerge::ReadDoc;

    use super::*;

    /// `count` entries of one hand after each other, then one of another hand that saw none of them.
    fn rows(count: u64) -> Vec<EntryRow> {
        let mut rows = Vec::new();
        let mut deps = Vec::new();
        for seq in 1..=count {
            let row = row(Actor([1; 16]), seq, std::mem::take(&mut deps), seq);
            deps = vec![row.hash];
            rows.push(row);
        }
        rows.push(row(Actor([2; 16]), 1, Vec::new(), 1));
        rows
    }

    fn row(actor: Actor, seq: u64, deps: Vec<ChangeHash>, op: u64) -> EntryRow {
        let id = EntryId::from_bytes([actor.0[0], seq as u8, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
        let mut row = EntryRow {
            hash: ChangeHash([0; 32]),
            book: BookId::Fleet,
            actor,
            seq,
            deps,
            op,
            id,
            payload: vec![0xf6],
            signature: [3; 64],
        };
        row.hash = row.change().unwrap().hash;
        row
    }

    #[test]
    fn a_document_holds_every_row_and_has_their_heads() {
        let rows = rows(5);
        let document = rebuild(rows.clone()).unwrap();
        assert_eq!(document.length(automerge::ROOT), 6);
        let mut heads: Vec<_> = document.get_heads().iter().map(|head| head.0).collect();
        heads.sort_unstable();
        let mut ours = vec![rows[4].hash.0, rows[5].hash.0];
        ours.sort_unstable();
        assert_eq!(heads, ours);
    }

    #[test]
    fn one_id_twice_keeps_both() {
        let (one, mut two) = (row(Actor([1; 16]), 1, vec![], 1), row(Actor([2; 16]), 1, vec![], 1));
        two.id = one.id;
        two.payload = vec![0xf5];
        two.hash = two.change().unwrap().hash;
        let document = rebuild([one.clone(), two]).unwrap();
        assert_eq!(document.get_all(automerge::ROOT, one.id.to_string()).unwrap().len(), 2);
    }

    #[test]
    fn rows_that_do_not_fit_are_an_error_and_no_panic() {
        let good = rows(3);
        assert!(matches!(rebuild(good[1..].to_vec()), Err(DocumentError::Order(_))));
        let mut bad = good.clone();
        bad[2].payload = vec![0xf5];
        assert!(matches!(rebuild(bad), Err(DocumentError::Hash { .. })));
        let mut bad = good.clone();
        bad[2].op = 7;
        assert!(matches!(rebuild(bad), Err(DocumentError::Order(_))));
        let mut bad = good.clone();
        bad.push(good[3].clone());
        assert!(matches!(rebuild(bad), Err(DocumentError::Order(_))));
        let mut bad = good;
        bad[3].book = BookId::Truck { truck: sumpbook_trade::TruckId::from_bytes([0; 16]), year: 2026 };
        assert!(matches!(rebuild(bad), Err(DocumentError::OtherBook(_))));
    }
}
