//! Recording: an entry of one's own, signed, placed and durable when the call returns.

use chrono::Datelike;
use sumpbook_trade::{Entry, EntryId, Fact, FactKind, TruckId};

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
        let Ledger { store, knows, .. } = self;
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
            let twins = match writing.truth().has_id(new.entry.id)? {
                true => writing.truth().by_id(new.entry.id)?,
                false => Vec::new(),
            };
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
        let last = truth.last_of(book, self.actor)?;
        let (place, op) = self.next_place(&truth, book, last, new.entry.id)?;
        let signature = sign::sign(&place, &payload, &self.own)?;
        let row = row_of(&Incoming { place, payload, signature }, op)?;
        let previous = last.map(|(_, hash, _)| hash);
        let n = writing.insert(&row, previous, received, None)?;
        self.project_and_learn(writing, n, &row, Some(&new.entry))?;
        Ok(n)
    }

    /// Where this device's next entry in a book stands, and its op.
    fn next_place(
        &self,
        truth: &Truth<'_>,
        book: BookId,
        last: Option<(u64, ChangeHash, u64)>,
        id: EntryId,
    ) -> Result<(Place, u64), LedgerError> {
        let mut heads = truth.heads_and_ops(book)?;
        if let Some((_, hash, op)) = last
            && !heads.iter().any(|(head, _)| *head == hash)
        {
            heads.push((hash, op));
        }
        if heads.len() > MOST_DEPS {
            heads = self.newest_deps(truth, heads, last.map(|(_, hash, _)| hash))?;
        }
        heads.sort_unstable();
        let op = change::next_op(heads.iter().map(|(_, op)| *op));
        let deps = heads.into_iter().map(|(hash, _)| hash).collect();
        let seq = last.map_or(1, |(seq, _, _)| seq.saturating_add(1));
        Ok((Place { fleet: self.root.fleet, book, actor: self.actor, seq, deps, id }, op))
    }

    /// The own predecessor and the 63 newest of too many heads.
    fn newest_deps(
        &self,
        truth: &Truth<'_>,
        heads: Vec<(ChangeHash, u64)>,
        own: Option<ChangeHash>,
    ) -> Result<Vec<(ChangeHash, u64)>, LedgerError> {
        let mut numbered = Vec::with_capacity(heads.len());
        for (head, op) in heads {
            // The own one before all others, whatever came since.
            let n = match Some(head) == own {
                true => i64::MAX,
                false => truth.by_hash(&head)?.map_or(0, |held| held.n),
            };
            numbered.push((n, head, op));
        }
        numbered.sort_unstable_by(|a, b| b.cmp(a));
        Ok(numbered.into_iter().take(MOST_DEPS).map(|(_, head, op)| (head, op)).collect())
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
