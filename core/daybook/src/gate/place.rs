//! Where an entry stands: the part of it that is signed but not written in its payload.

use minicbor::{Encode, Encoder};
use sumpbook_trade::{EntryId, FleetId};

use super::change::ChangeHash;
use super::key::Actor;
use crate::book::BookId;

/// The most changes an entry may name as seen: its own previous one and the 63 newest others.
pub const MOST_DEPS: usize = 64;

/// The first word of what is signed, so that no other message of ours can be taken for an entry.
const CONTEXT: &str = "sumpbook entry 1";

/// An entry's place: which fleet and book, whose hand, which number of that hand, what it had seen.
///
/// It is signed with the payload, so an entry cannot be moved, re-ordered or given other predecessors.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    /// The fleet.
    pub fleet: FleetId,
    /// The book.
    pub book: BookId,
    /// Who writes; begins with the signer's key id.
    pub actor: Actor,
    /// Number of this entry among the actor's in this book, from 1.
    pub seq: u64,
    /// The heads of the book the signer held; strictly ascending, at most [`MOST_DEPS`].
    pub deps: Vec<ChangeHash>,
    /// The entry's own name.
    pub id: EntryId,
}

/// Why a place can be nobody's.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum PlaceError {
    /// Entries are numbered from 1.
    #[error("an entry is numbered from 1")]
    Seq,
    /// More predecessors than an entry may name.
    #[error("{0} predecessors where at most {MOST_DEPS} may stand")]
    TooManyDeps(usize),
    /// The predecessors are not in strictly ascending order.
    #[error("predecessors are not strictly ascending")]
    DepsOrder,
    /// Every entry but an actor's first has seen at least the one before it.
    #[error("entry number {0} names no predecessor")]
    NoDeps(u64),
}

impl Place {
    /// What can be judged of a place alone, with no book at hand.
    ///
    /// # Errors
    /// The first rule broken.
    pub fn check(&self) -> Result<(), PlaceError> {
        if self.seq == 0 {
            return Err(PlaceError::Seq);
        }
        if self.deps.len() > MOST_DEPS {
            return Err(PlaceError::TooManyDeps(self.deps.len()));
        }
        if !self.deps.is_sorted_by(|a, b| a < b) {
            return Err(PlaceError::DepsOrder);
        }
        if self.seq > 1 && self.deps.is_empty() {
            return Err(PlaceError::NoDeps(self.seq));
        }
        Ok(())
    }
}

/// `["sumpbook entry 1", fleet, book, actor, seq, [* deps], id]`: the external data of the signature.
impl<C> Encode<C> for Place {
    fn encode<W: minicbor::encode::Write>(
        &self,
        e: &mut Encoder<W>,
        ctx: &mut C,
    ) -> Result<(), minicbor::encode::Error<W::Error>> {
        e.array(7)?.str(CONTEXT)?.encode_with(self.fleet, ctx)?.encode_with(self.book, ctx)?;
        e.encode_with(self.actor, ctx)?.u64(self.seq)?.array(self.deps.len() as u64)?;
        for dep in &self.deps {
            e.encode_with(dep, ctx)?;
        }
        e.encode_with(self.id, ctx)?.ok()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn place() -> Place {
        Place {
            fleet: FleetId::from_bytes([1; 16]),
            book: BookId::Fleet,
            actor: Actor([2; 16]),
            seq: 2,
            deps: vec![ChangeHash([3; 32]), ChangeHash([4; 32])],
            id: EntryId::from_bytes([5; 16]),
        }
    }

    #[test]
    fn each_rule_is_kept() {
        assert_eq!(place().check(), Ok(()));
        assert_eq!(Place { seq: 0, ..place() }.check(), Err(PlaceError::Seq));
        assert_eq!(Place { deps: vec![], ..place() }.check(), Err(PlaceError::NoDeps(2)));
        assert_eq!(Place { seq: 1, deps: vec![], ..place() }.check(), Ok(()));
        let twice = vec![ChangeHash([3; 32]); 2];
        assert_eq!(Place { deps: twice, ..place() }.check(), Err(PlaceError::DepsOrder));
        let many: Vec<_> = (0..65).map(|n| ChangeHash([n; 32])).collect();
        assert_eq!(Place { deps: many.clone(), ..place() }.check(), Err(PlaceError::TooManyDeps(65)));
        assert_eq!(Place { deps: many[..64].to_vec(), ..place() }.check(), Ok(()));
    }

    #[test]
    fn the_external_data_is_as_written_down() {
        // Put together by hand from RFC 8949 section 3.
        let mut by_hand = vec![0x87, 0x70];
        by_hand.extend(b"sumpbook entry 1");
        by_hand.push(0x50);
        by_hand.extend([1; 16]);
        by_hand.extend([0x00, 0x50]);
        by_hand.extend([2; 16]);
        by_hand.extend([0x02, 0x82, 0x58, 0x20]);
        by_hand.extend([3; 32]);
        by_hand.extend([0x58, 0x20]);
        by_hand.extend([4; 32]);
        by_hand.push(0x50);
        by_hand.extend([5; 16]);
        assert_eq!(minicbor::to_vec(place()).unwrap(), by_hand);
    }
}
