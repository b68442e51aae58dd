//! The automerge change of an entry: one op, built here and never received.

use std::num::NonZeroU64;

use automerge::legacy::{Key, ObjectId, Op, OpType};
use automerge::{ActorId, ExpandedChange, ScalarValue};
use sumpbook_trade::EntryId;

use super::key::{Actor, fixed_bytes};

fixed_bytes! {
    /// The name of a change: SHA-256 of its chunk (type, length, body). Stored with its row; the truth.
    ChangeHash, 32
}

impl ChangeHash {
    /// Its first 8 bytes: how a parcel names it within a book.
    pub fn prefix(self) -> [u8; 8] {
        let [a, b, c, d, e, f, g, h, ..] = self.0;
        [a, b, c, d, e, f, g, h]
    }
}

/// The highest number an op may have: automerge documents hold 32 bits.
pub const HIGHEST_OP: u64 = u32::MAX as u64;

/// Why a change cannot be built.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ChangeError {
    /// Ops are numbered from 1 to [`HIGHEST_OP`].
    #[error("op {0} is not between 1 and {HIGHEST_OP}")]
    Op(u64),
}

/// What a change is made of. Everything else in it is fixed: `put(ROOT, id, value)`, time 0, no message.
#[derive(Clone, Copy, Debug)]
pub struct Parts<'a> {
    /// Who writes.
    pub actor: Actor,
    /// Number of the change among the actor's, from 1.
    pub seq: u64,
    /// Number of its one op: see [`next_op`].
    pub op: u64,
    /// Its predecessors; automerge writes them ascending.
    pub deps: &'a [ChangeHash],
    /// The key it puts, as canonical hyphenated text.
    pub id: EntryId,
    /// The bytes it puts: the entry's COSE_Sign1.
    pub value: &'a [u8],
}

/// A change with its name.
#[derive(Clone, Debug)]
pub struct Change {
    /// SHA-256 of the chunk.
    pub hash: ChangeHash,
    /// The change itself, for putting documents together.
    pub automerge: automerge::Change,
}

impl Change {
    /// The chunk's bytes, uncompressed.
    pub fn bytes(&self) -> &[u8] {
        self.automerge.raw_bytes()
    }
}

/// Builds the change. The same parts give the same bytes, for ever.
///
/// # Errors
/// [`ChangeError::Op`] when the op's number cannot be written.
pub fn build(parts: Parts<'_>) -> Result<Change, ChangeError> {
    let wrong = ChangeError::Op(parts.op);
    let start_op = NonZeroU64::new(parts.op).filter(|op| op.get() <= HIGHEST_OP).ok_or(wrong)?;
    let put = Op {
        action: OpType::Put(ScalarValue::Bytes(parts.value.to_vec())),
        obj: ObjectId::Root,
        key: Key::Map(parts.id.to_string().into()),
        pred: Vec::new().into(),
        insert: false,
    };
    let automerge = automerge::Change::from(ExpandedChange {
        operations: vec![put],
        actor_id: ActorId::from(parts.actor.0),
        hash: None,
        seq: parts.seq,
        start_op,
        time: 0,
        message: None,
        deps: parts.deps.iter().map(|dep| automerge::ChangeHash(dep.0)).collect(),
        extra_bytes: Vec::new(),
        author: None,
    });
    Ok(Change { hash: ChangeHash(automerge.hash().0), automerge })
}

/// The op of a change whose predecessors' ops are these: one above the highest, 1 with none.
pub fn next_op(ops_of_deps: impl IntoIterator<Item = u64>) -> u64 {
    ops_of_deps.into_iter().max().unwrap_or(0).saturating_add(1)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parts() -> Parts<'static> {
        Parts {
            actor: Actor([2; 16]),
            seq: 1,
            op: 1,
            deps: &[],
            id: EntryId::from_bytes([5; 16]),
            value: &[1, 2, 3],
        }
    }

    #[test]
    fn a_change_is_one_put_with_no_time_and_no_message() {
        let change = build(parts()).unwrap();
        assert_eq!(change.automerge.len(), 1);
        assert_eq!(change.automerge.timestamp(), 0);
        assert_eq!(change.automerge.message(), None);
        assert_eq!(build(parts()).unwrap().hash, change.hash);
        let next = build(Parts { deps: &[change.hash], seq: 2, op: 2, ..parts() }).unwrap();
        assert_ne!(next.hash, change.hash);
    }

    #[test]
    fn ops_stay_within_what_a_document_holds() {
        assert_eq!(build(Parts { op: 0, ..parts() }).unwrap_err(), ChangeError::Op(0));
        assert!(build(Parts { op: HIGHEST_OP, ..parts() }).is_ok());
        let above = HIGHEST_OP + 1;
        assert_eq!(build(Parts { op: above, ..parts() }).unwrap_err(), ChangeError::Op(above));
        assert_eq!(next_op([]), 1);
        assert_eq!(next_op([4, 9, 2]), 10);
    }
}
