//! Projections, dropped and built again from the truth; and the shop's knowledge of another moment.

use std::collections::BTreeSet;

use sumpbook_trade::Entry;

use super::{Admission, Incoming, Ledger, LedgerError};
use crate::book::BookId;
use crate::gate::DeviceKey;
use crate::store::{RefusedRow, Store};

/// Set by each step after which an entry may name more photos, or sounds, than were noted down.
const PHOTOS_UNREAD: &str = "photos-unread";

/// Set by a step after which more of an entry is projected than before.
const PROJECTED_BEFORE: &str = "projected-before";

impl Ledger {
    /// Drops every projection and builds them again from the truth.
    ///
    /// # Errors
    /// As any write; then the old ones stand.
    pub fn rebuild(&mut self) -> Result<(), LedgerError> {
        let Ledger { store, knows, .. } = self;
        let result = (|| {
            let writing = store.begin()?;
            writing.clear_projections()?;
            knows.project_everything(&writing)?;
            writing.commit()?;
            Ok(())
        })();
        if result.is_err() {
            knows.load_fleet(&store.truth())?;
        }
        self.noted(result)
    }

    /// A ledger in memory that knows what this one knew when it held entries up to `upto`. For reading.
    ///
    /// # Errors
    /// As any read.
    pub fn as_of(&self, upto: i64) -> Result<Ledger, LedgerError> {
        self.as_of_without(upto, &BTreeSet::new())
    }

    /// As [`Ledger::as_of`], as if the entries of these numbers had never come.
    ///
    /// # Errors
    /// As any read.
    pub fn as_of_without(&self, upto: i64, without: &BTreeSet<i64>) -> Result<Ledger, LedgerError> {
        let own = DeviceKey::from_secret(self.knows.own.secret());
        let mut then = Ledger::over(Store::in_memory()?, self.knows.root, own)?;
        then.follow(self, upto, without)?;
        for row in self.store.exchanges(i64::MAX)? {
            then.store.log_exchange(&row)?;
        }
        Ok(then)
    }

    /// Takes over what `other` held up to a number and this ledger does not hold yet, under the same numbers.
    ///
    /// # Errors
    /// As any read of the one and any write of the other.
    pub fn follow(&mut self, other: &Ledger, upto: i64, without: &BTreeSet<i64>) -> Result<(), LedgerError> {
        let Ledger { store, knows, .. } = self;
        let writing = store.begin()?;
        let mut after = writing.truth().last_n()?;
        loop {
            let rows = other.store.truth().between(after, upto, 1_000)?;
            let Some(end) = rows.last().map(|held| held.n) else { break };
            for held in rows.iter().filter(|held| !without.contains(&held.n)) {
                let previous = match held.row.seq {
                    1 => None,
                    seq => writing.truth().at_place(held.row.book, held.row.actor, seq.saturating_sub(1))?,
                };
                writing.take_over(held, previous)?;
                knows.project_and_learn(&writing, held.n, &held.row, None)?;
            }
            after = end;
        }
        writing.commit()?;
        Ok(())
    }

    /// Projects anew what an older form of the file projected.
    pub(super) fn project_older(&mut self) -> Result<(), LedgerError> {
        if self.store.setting(PROJECTED_BEFORE)?.is_none_or(|before| before.is_empty()) {
            return Ok(());
        }
        self.in_one_commit(|ledger| {
            ledger.rebuild()?;
            Ok(ledger.store.set_setting(PROJECTED_BEFORE, &[])?)
        })
    }

    /// Reads which photos and sounds are named by entries that came before this was noted down.
    pub(super) fn read_photos(&mut self) -> Result<(), LedgerError> {
        if self.store.setting(PHOTOS_UNREAD)?.is_none_or(|unread| unread.is_empty()) {
            return Ok(());
        }
        self.in_one_commit(|ledger| {
            let mut after = 0;
            loop {
                let writing = ledger.store.begin()?;
                let rows = writing.truth().between(after, i64::MAX, 1_000)?;
                let Some(end) = rows.last().map(|held| held.n) else { break };
                for held in rows {
                    if let Ok(entry) = Entry::from_payload(&held.row.payload) {
                        writing.put_photos(held.n, &entry.fact.photos(), &entry.fact.sounds())?;
                    }
                }
                writing.commit()?;
                after = end;
            }
            Ok(ledger.store.set_setting(PHOTOS_UNREAD, &[])?)
        })
    }

    /// Takes rows saved out of a damaged file through the gate again: what hangs on a lost one waits.
    pub(super) fn place_salvaged(&mut self) -> Result<(), LedgerError> {
        let fleet = self.knows.root.fleet;
        let last = self.store.truth().last_n()?;
        let rows = self.store.truth().between(0, last, i64::MAX)?;
        let mut fresh = Ledger::over(
            Store::in_memory()?,
            self.knows.root,
            DeviceKey::from_secret(self.knows.own.secret()),
        )?;
        let mut kept = BTreeSet::new();
        let mut waiting = Vec::new();
        let mut refused = Vec::new();
        for held in &rows {
            let incoming = Incoming::of_row(fleet, &held.row);
            match fresh.admit(std::slice::from_ref(&incoming), held.received_ms, held.carrier)?.first() {
                Some(Admission::Admitted(_)) => {
                    kept.insert(held.n);
                }
                Some(Admission::Waiting { missing }) => {
                    waiting.push((
                        crate::exchange::shelf::wrap(&incoming),
                        *missing,
                        Some(held.row.actor.key().0),
                    ));
                }
                // Its bytes, or its predecessor's name, did not come through.
                _ => refused.push(RefusedRow {
                    bytes: crate::exchange::shelf::wrap(&incoming),
                    reason: "salvaged-unplaced".to_owned(),
                    device: Some(held.row.actor.key().0),
                    id: Some(held.row.id.bytes()),
                    received_ms: held.received_ms,
                }),
            }
        }
        self.store.keep_refused(&refused)?;
        let writing = self.store.begin()?;
        writing.clear_projections()?;
        let lost: Vec<_> = rows.into_iter().filter(|held| !kept.contains(&held.n)).collect();
        let books: BTreeSet<BookId> = writing.truth().books()?.into_iter().collect();
        for book in books {
            let of_book: Vec<_> = lost.iter().filter(|held| held.row.book == book).cloned().collect();
            writing.remove(book, &of_book)?;
        }
        writing.commit()?;
        self.store.keep_waiting(&waiting, 0)?;
        self.rebuild()
    }
}
