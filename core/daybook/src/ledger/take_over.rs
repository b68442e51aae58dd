//! A whole folder's entries taken over into another folder of the same fleet, through the gate.

use super::{Admission, Incoming, Ledger, LedgerError};
use crate::store::HeldEntry;

/// An entry as another folder held it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Carried {
    /// Its number there. Closed sheets and the exchange log name entries by number, so it is kept.
    pub n: i64,
    /// When it came there, milliseconds.
    pub received_ms: i64,
    /// Key id of who brought it there; none when written there.
    pub carrier: Option<[u8; 8]>,
    /// The entry.
    pub incoming: Incoming,
}

impl Ledger {
    /// Takes over entries in their order, each checked as any that comes in, under the numbers they had, all in one
    /// transaction. The first that is not admitted ends it, and then none of them is in.
    ///
    /// # Errors
    /// When the store cannot be written. Inside: the place among those given, and why that one was not admitted.
    pub fn take_over(&mut self, entries: &[Carried]) -> Result<Result<(), (usize, Admission)>, LedgerError> {
        let Ledger { store, knows, .. } = self;
        let result = (|| {
            let writing = store.begin()?;
            knows.refresh(&writing.truth())?;
            for (place, entry) in entries.iter().enumerate() {
                let (row, previous) = match knows.examine(&writing, &entry.incoming, None, None)? {
                    Ok(found) => found,
                    Err(admission) => return Ok(Err((place, admission))),
                };
                let Carried { n, received_ms, carrier, .. } = *entry;
                let held = HeldEntry { n, row, received_ms, carrier };
                writing.take_over(&held, previous)?;
                knows.project_and_learn(&writing, n, &held.row, None)?;
            }
            writing.commit()?;
            Ok(Ok(()))
        })();
        if !matches!(result, Ok(Ok(()))) {
            // Keys and fleet may have been learnt from entries that did not stay.
            knows.load_fleet(&store.truth())?;
        }
        self.noted(result)
    }
}
