//! Recording: an entry of one's own, signed, placed and durable when the call returns.

use chrono::Datelike;
use sumpbook_trade::{Entry, Fact, FactKind, TruckId};

use super::admit::row_of;
use super::{Incoming, Knowledge, Ledger, LedgerError};
use crate::book::BookId;
use crate::gate::{Actor, ChangeHash, MOST_DEPS, Place, change, sign};
use crate::store::{Truth, Writing};

/// An entry to be recorded and the book it goes to.
#[derive(Clone, Debug)]
pub struct NewEntry {
    /// The entry, complete with its id.
    pub entry: Entry,
    /// The truck whose book it goes to; none for the fleet book.
    pub truck: Option<TruckId>,
}

impl NewEntry {
    /// The entry in the book of the unit it is about.
    pub fn about_its_unit(entry: Entry) -> NewEntry {
        NewEntry { truck: entry.unit, entry }
    }
}

impl Ledger {
    /// Records entries in one transaction and returns their numbers. An id that is already here under this
    /// device's hand is not recorded again: trying again after a doubtful end is harmless.
    ///
    /// # Errors
    /// When an entry cannot be signed or the store cannot be written; then none of them is recorded.
    pub fn record(&mut self, entries: &[NewEntry], received_ms: i64) -> Result<Vec<i64>, LedgerError> {
        let Ledger { store, knows } = self;
        let result = (|| {
            let writing = store.begin()?;
            let numbers = knows.record_in(&writing, entries, received_ms)?;
            writing.commit()?;
            Ok(numbers)
        })();
        if result.is_err() {
            // The actor's count may stand in a commit of which nobody knows how it ended.
            knows.actor = Actor::new(knows.own.id())?;
            knows.load_fleet(&store.truth())?;
        }
        self.noted(result)
    }
}

impl Knowledge {
    /// Records entries within a transaction.
    pub(super) fn record_in(
        &mut self,
        writing: &Writing<'_>,
        entries: &[NewEntry],
        received_ms: i64,
    ) -> Result<Vec<i64>, LedgerError> {
        self.refresh(&writing.truth())?;
        let received = received_ms.max(writing.truth().last_received()?);
        let mut numbers = Vec::with_capacity(entries.len());
        for new in entries {
            let payload = new.entry.to_payload();
            let twins = writing.truth().by_id(new.entry.id)?;
            let own = self.own.id();
            let n = match twins.iter().find(|held| held.row.payload == payload && held.row.actor.key() == own)
            {
                Some(held) => held.n,
                None => self.place_and_sign(writing, new, payload, received)?,
            };
            writing.drop_draft(new.entry.id)?;
            numbers.push(n);
        }
        Ok(numbers)
    }

    fn place_and_sign(
        &mut self,
        writing: &Writing<'_>,
        new: &NewEntry,
        payload: Vec<u8>,
        received: i64,
    ) -> Result<i64, LedgerError> {
        let truth = writing.truth();
        let book = book_of(new);
        let place = self.next_place(&truth, book, &new.entry)?;
        let previous = match place.seq {
            1 => None,
            seq => truth.at_place(book, self.actor, seq.saturating_sub(1))?,
        };
        let signature = sign::sign(&place, &payload, &self.own)?;
        let mut ops = Vec::with_capacity(place.deps.len());
        for dep in &place.deps {
            ops.extend(truth.op_of(book, dep)?);
        }
        let row = row_of(&Incoming { place, payload, signature }, change::next_op(ops))?;
        let n = writing.insert(&row, previous, received, None)?;
        self.project_and_learn(writing, n, &row)?;
        Ok(n)
    }

    /// Where this device's next entry in a book stands.
    fn next_place(&self, truth: &Truth<'_>, book: BookId, entry: &Entry) -> Result<Place, LedgerError> {
        let last = truth.last_seq(book, self.actor)?;
        let mut deps = truth.heads(book)?;
        if let Some(previous) = truth.at_place(book, self.actor, last)?
            && !deps.contains(&previous)
        {
            deps.push(previous);
        }
        if deps.len() > MOST_DEPS {
            deps = self.newest_deps(truth, book, deps, last)?;
        }
        deps.sort_unstable();
        Ok(Place { fleet: self.root.fleet, book, actor: self.actor, seq: last + 1, deps, id: entry.id })
    }

    /// The own predecessor and the 63 newest of too many heads.
    fn newest_deps(
        &self,
        truth: &Truth<'_>,
        book: BookId,
        heads: Vec<ChangeHash>,
        last: u64,
    ) -> Result<Vec<ChangeHash>, LedgerError> {
        let own = truth.at_place(book, self.actor, last)?;
        let mut numbered = Vec::with_capacity(heads.len());
        for head in heads.into_iter().filter(|head| Some(*head) != own) {
            let n = truth.by_hash(&head)?.map_or(0, |held| held.n);
            numbered.push((n, head));
        }
        numbered.sort_unstable_by(|a, b| b.cmp(a));
        let room = MOST_DEPS - usize::from(own.is_some());
        Ok(own.into_iter().chain(numbered.into_iter().take(room).map(|(_, head)| head)).collect())
    }
}

/// The book of an entry: its truck's, of the UTC year of its time.
fn book_of(new: &NewEntry) -> BookId {
    let fleet_wide = matches!(new.entry.fact.kind(), FactKind::SheetClosed)
        || matches!(new.entry.fact, Fact::FleetNamed(_));
    match new.truck {
        Some(truck) if !fleet_wide => {
            let corrected = new.entry.at.unix_ms().saturating_add(new.entry.clock_off_ms.unwrap_or(0));
            let year = chrono::DateTime::from_timestamp_millis(corrected).map_or(1970, |at| at.year());
            BookId::Truck { truck, year: u16::try_from(year).unwrap_or(1970) }
        }
        _ => BookId::Fleet,
    }
}
