//! What of a request can be done before its turn to be written comes: reading it, and seeing that its signatures
//! hold. It is most of the work, and it needs no writer.

use super::admit_runs::unpack_known;
use crate::book::EntryRow;
use crate::gate::{KeyId, sign};
use crate::ledger::{Incoming, Ledger};
use crate::parcel::{Opened, Standing, Unpacked, open};

/// A request of a phone that is known, read beside the writer.
#[derive(Debug)]
pub struct Ahead {
    pub(super) opened: Opened,
    /// Its entries with their changes built, when every one of them could be placed and its signature holds.
    pub(super) rows: Option<Vec<EntryRow>>,
}

impl Ahead {
    /// The phone that signed it: its signature holds.
    pub fn signer(&self) -> KeyId {
        self.opened.signer.id()
    }
}

/// Reads a request over a second connection, which sees what was durable a moment ago. None when only the writer
/// can say what is to become of it: then it is read there, from its bytes.
///
/// What holds here holds for ever: a key that was let in stays known, and no entry that is named goes away but
/// with the branch that lost a fork, which the writer sees.
pub fn read_ahead(ledger: &mut Ledger, wire: &[u8]) -> Option<Ahead> {
    ledger.refresh().ok()?;
    let opened = open(wire, |id| ledger.key(id)).ok()?;
    if opened.standing != Standing::Known || opened.parcel.fleet != ledger.root().fleet {
        return None;
    }
    let rows = rows(ledger, &opened);
    Some(Ahead { opened, rows })
}

fn rows(ledger: &Ledger, opened: &Opened) -> Option<Vec<EntryRow>> {
    let fleet = ledger.root().fleet;
    let unpacked = unpack_known(ledger, opened.parcel.runs.clone()).ok()?;
    let holds = |one| match one {
        Unpacked::Row(row) => {
            let entry = Incoming::of_row(fleet, &row);
            let key = ledger.key(row.actor.key())?;
            sign::verify(&entry.place, &entry.payload, &entry.signature, &key).ok().map(|()| row)
        }
        Unpacked::Missing { .. } | Unpacked::Unbuildable { .. } => None,
    };
    unpacked.into_iter().map(holds).collect()
}
