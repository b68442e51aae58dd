//! Placing one's own again: after a fork was lost, or a copy was restored.

use std::collections::HashSet;

use sumpbook_trade::{Entry, EntryId};

use super::{Ledger, LedgerError, NewEntry};
use crate::book::BookId;
use crate::gate::{Actor, ChangeHash};
use crate::store::{HeldEntry, RefusedRow};

impl Ledger {
    /// Takes the branch that begins with the refused entries out of its book and places what is this
    /// device's own again, signed anew after what the book now holds. What others wrote on it is kept
    /// outside. Returns how many were placed again.
    ///
    /// # Errors
    /// As any write; then the old branch still stands.
    pub fn place_again(
        &mut self,
        book: BookId,
        refused: &[EntryId],
        now_ms: i64,
    ) -> Result<usize, LedgerError> {
        let rows = self.store.truth().of_book(book)?;
        let mut losing: HashSet<ChangeHash> =
            rows.iter().filter(|held| refused.contains(&held.row.id)).map(|held| held.row.hash).collect();
        // Rows stand in admission order, so one pass finds every descendant.
        let branch: Vec<HeldEntry> = rows
            .into_iter()
            .filter(|held| {
                let below = held.row.deps.iter().any(|dep| losing.contains(dep));
                if below {
                    losing.insert(held.row.hash);
                }
                below || losing.contains(&held.row.hash)
            })
            .collect();
        if branch.is_empty() {
            return Ok(0);
        }
        let kept: Vec<RefusedRow> = branch
            .iter()
            .map(|held| RefusedRow {
                bytes: crate::exchange::shelf::wrap(&super::Incoming::of_row(
                    self.knows.root.fleet,
                    &held.row,
                )),
                reason: "lost-fork".to_owned(),
                device: Some(held.row.actor.key().0),
                id: Some(held.row.id.bytes()),
                received_ms: held.received_ms,
            })
            .collect();
        self.store.keep_refused(&kept)?;
        let mut own = Vec::new();
        for held in branch.iter().filter(|held| held.row.actor.key() == self.knows.own.id()) {
            if let Ok(entry) = Entry::from_payload(&held.row.payload) {
                let truck = match book {
                    BookId::Fleet => None,
                    BookId::Truck { truck, .. } => Some(truck),
                };
                own.push(NewEntry { entry, truck });
            }
        }
        // Out and in again in one transaction: killed in between, the old branch still stands.
        let Ledger { store, knows, .. } = self;
        let writing = store.begin()?;
        writing.remove(book, &branch)?;
        knows.actor = Actor::new(knows.own.id())?;
        knows.record_in(&writing, &own, now_ms)?;
        writing.commit()?;
        self.rebuild()?;
        Ok(own.len())
    }
}
