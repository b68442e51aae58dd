//! Keeping the folded fleet in step with the fleet book.

use std::collections::BTreeSet;

use sumpbook_trade::{Entry, Fact, FactKind};

use super::keys::Keys;
use super::{Knowledge, Ledger, LedgerError};
use crate::book::{BookId, EntryRow};
use crate::fleet::Fleet;
use crate::gate::{KeyId, PublicKey};
use crate::judgement::Judged;
use crate::state::folded;
use crate::store::{HeldEntry, Truth, Writing};

impl Ledger {
    /// Learns what another writer of this folder changed in the fleet: whoever was let in there is known here.
    ///
    /// # Errors
    /// As any read.
    pub fn refresh(&mut self) -> Result<(), LedgerError> {
        let Ledger { store, knows, .. } = self;
        knows.refresh(&store.truth())
    }

    /// Keeps the folded fleet, so that the next opening need not fold it.
    pub(crate) fn keep_fleet(&mut self) -> Result<(), LedgerError> {
        if self.store.truth().fleet_kept()?.1.is_some() {
            return Ok(());
        }
        let Ledger { store, knows, .. } = self;
        let writing = store.begin()?;
        knows.refresh(&writing.truth())?;
        writing.put_fleet(knows.fleet_version, &folded::to_bytes(&(&knows.fleet, knows.fleet_op))?)?;
        writing.commit()?;
        Ok(())
    }
}

impl Knowledge {
    /// Reads the fleet again when another writer of this folder changed it.
    pub(super) fn refresh(&mut self, truth: &Truth<'_>) -> Result<(), LedgerError> {
        if truth.fleet_version()? == self.fleet_version { Ok(()) } else { self.load_fleet(truth) }
    }

    /// Reads the fleet: the folded one when it is kept, else the book.
    pub(super) fn load_fleet(&mut self, truth: &Truth<'_>) -> Result<(), LedgerError> {
        let (version, kept) = truth.fleet_kept()?;
        (self.fleet, self.fleet_op) = match kept.and_then(|body| folded::from_bytes::<(Fleet, u64)>(&body)) {
            Some((mut fleet, op)) => {
                fleet.find_what_follows();
                (fleet, op)
            }
            None => self.fold(truth)?,
        };
        self.fleet_version = version;
        self.learn_keys();
        Ok(())
    }

    /// Projects an entry that was just written, and learns from it when the shop wrote it in the fleet book.
    pub(super) fn project_and_learn(
        &mut self,
        writing: &Writing<'_>,
        n: i64,
        row: &EntryRow,
        entry: Option<&Entry>,
    ) -> Result<(), LedgerError> {
        let changed = self.project(writing, n, row, entry)?;
        for device in self.revoked_at(row) {
            self.project_of_device(writing, device, Some(row.book))?;
        }
        if changed.is_empty() {
            return Ok(());
        }
        let truth = writing.truth();
        let next = row.op > self.fleet_op && changed.len() == 1 && changed.iter().all(|held| held.n == n);
        let counts = next && truth.fact(n)?.is_some_and(|fact| fact.judged == Judged::Counts);
        let entry = Entry::from_payload(&row.payload).ok().filter(|_| counts);
        // A fleet is registered in thousands of entries: one thing more costs one thing, not the whole fleet.
        if let Some(entry) = &entry
            && let Some(differing) = self.fleet.take_one(entry)
        {
            self.fleet_op = row.op;
            self.fleet_version = writing.change_fleet()?;
            if let Fact::DeviceEnrolled(device) = &entry.fact
                && let Ok(key) = PublicKey::from_bytes(&device.key.0)
            {
                self.keys.add(key.id(), device.key.0);
            }
            for truck in differing {
                writing.mark_stale(Some(truck))?;
            }
            return Ok(());
        }
        let before = self.fleet.clone();
        match entry {
            Some(entry) => {
                self.fleet.take(&entry);
                self.fleet_op = row.op;
            }
            None => (self.fleet, self.fleet_op) = self.fold(&truth)?,
        }
        self.fleet_version = writing.change_fleet()?;
        self.learn_keys();
        self.follow(writing, before)
    }

    /// Drops nothing, projects everything as if it had just come: the fleet book first, for all else is
    /// judged and dated by the fleet, and it by nothing but itself and what the shop decided.
    pub(super) fn project_everything(&mut self, writing: &Writing<'_>) -> Result<(), LedgerError> {
        for held in writing.truth().of_book(BookId::Fleet)? {
            self.project(writing, held.n, &held.row, None)?;
        }
        (self.fleet, self.fleet_op) = self.fold(&writing.truth())?;
        self.project_all(writing)?;
        let before = self.fleet.clone();
        (self.fleet, self.fleet_op) = self.fold(&writing.truth())?;
        self.fleet_version = writing.change_fleet()?;
        self.learn_keys();
        self.follow(writing, before)
    }

    /// Brings in line what was worked out with another fleet, until nothing of it changes the fleet.
    fn follow(&mut self, writing: &Writing<'_>, mut before: Fleet) -> Result<(), LedgerError> {
        loop {
            let changed = self.follow_once(writing, &before)?;
            if !changed {
                return Ok(());
            }
            before = self.fleet.clone();
            (self.fleet, self.fleet_op) = self.fold(&writing.truth())?;
            self.learn_keys();
        }
    }

    fn follow_once(&self, writing: &Writing<'_>, before: &Fleet) -> Result<bool, LedgerError> {
        if self.fleet.zone != before.zone {
            // Yard days are cut in the yard's zone: every entry's day may be another now.
            return self.project_all(writing);
        }
        let mut changed = false;
        let (old, new) = (&before.revoked, &self.fleet.revoked);
        let differing =
            new.iter().filter(|r| !old.contains(r)).chain(old.iter().filter(|r| !new.contains(r)));
        let devices: BTreeSet<[u8; 8]> = differing.map(|(device, _, _)| *device).collect();
        for device in devices {
            changed |= self.project_of_device(writing, KeyId(device), None)?;
        }
        if self.fleet.programme != before.programme || self.fleet.numbers != before.numbers {
            writing.mark_stale(None)?;
        } else {
            for truck in self.fleet.differing(before) {
                writing.mark_stale(Some(truck))?;
            }
        }
        Ok(changed)
    }

    fn learn_keys(&mut self) {
        // Anew each time: what was learnt in a transaction that did not stay is forgotten.
        self.keys = Keys::of_fleet(self.root.shop, &self.fleet);
    }

    /// Folds the whole fleet book in the order of ops, which is the same on every device; with the highest op.
    fn fold(&self, truth: &Truth<'_>) -> Result<(Fleet, u64), LedgerError> {
        let mut rows: Vec<HeldEntry> = truth.of_book(BookId::Fleet)?;
        rows.retain(|held| held.row.actor.key() == self.root.shop.id());
        rows.sort_by_key(|held| (held.row.op, held.row.hash));
        let mut fleet = Fleet::default();
        let mut highest = 0;
        for held in rows {
            let fact = truth.fact(held.n)?;
            if fact.is_some() {
                highest = held.row.op;
            }
            if let (Some(fact), Ok(entry)) = (fact, Entry::from_payload(&held.row.payload)) {
                // A key that was ever enrolled is known for ever; it is stopped by its revocation only.
                let enrols = entry.fact.kind() == FactKind::DeviceEnrolled;
                if fact.judged == Judged::Counts || enrols {
                    fleet.take(&entry);
                }
            }
        }
        Ok((fleet, highest))
    }
}
