//! Folding: from a unit's entries to its state.

use std::collections::{BTreeMap, BTreeSet};

use chrono::{DateTime, TimeDelta};
use sumpbook_trade::day::{Coverage, EndOfDay, PreTrip, coverages};
use sumpbook_trade::defect::{Defect, DefectState, lock_outs};
use sumpbook_trade::lay_up;
use sumpbook_trade::{Entry, Fact, FactKind, TruckId};
use uuid::Uuid;

use super::folded;
use super::inputs::{self, Bearing};
use super::scope::Scope;
use super::{
    KEPT_DAYS, TopUpNow, UnitState, WROTE_DAYS, WroteLast, campaigns, counted, defects, hours,
    lay_up as laid, notes, oil, roster, services, sets, wear,
};
use crate::judgement::Judged;
use crate::ledger::{Ledger, LedgerError, day_number};
use crate::store::{FactRow, LockRow};

impl Ledger {
    /// Folds every unit that an entry touched since it was last folded, and keeps the results.
    ///
    /// # Errors
    /// As any write. A folder that cannot be written is still read: see [`Ledger::unit_state`].
    pub fn settle(&mut self) -> Result<(), LedgerError> {
        self.settle_some(usize::MAX).map(|_| ())
    }

    /// Folds so many of them at most. Returns whether none is left.
    ///
    /// # Errors
    /// As [`Ledger::settle`].
    pub fn settle_some(&mut self, most: usize) -> Result<bool, LedgerError> {
        let result = self.settle_stale(most);
        self.noted(result)
    }

    fn settle_stale(&mut self, most: usize) -> Result<bool, LedgerError> {
        self.keep_fleet()?;
        let mut folded = Vec::new();
        let stale = self.store().truth().stale_units()?;
        let all = stale.len() <= most;
        for truck in self.with_moved(stale.into_iter().take(most).collect()) {
            let state = self.fold_unit(truck, i64::MAX)?;
            let body = folded::to_bytes(&state)?;
            let locks = self.lock_rows(&state)?;
            folded.push((truck, body, locks));
        }
        if !folded.is_empty() {
            self.store_mut().keep_units(&folded)?;
        }
        Ok(all)
    }

    /// These trucks, and those on which a set stands now that stood on one of them: what comes late about it there
    /// is about it here.
    fn with_moved(&self, trucks: Vec<TruckId>) -> BTreeSet<TruckId> {
        let fleet = self.fleet();
        let moved =
            trucks.iter().flat_map(|truck| fleet.sets_of(*truck)).filter_map(|set| fleet.sets.get(&set)?.on);
        let moved: Vec<TruckId> = moved.collect();
        trucks.into_iter().chain(moved).collect()
    }

    /// Whether nothing came since about any truck the unit's set stood on.
    fn all_kept(
        &self,
        truck: TruckId,
        kept: impl Fn(TruckId) -> Result<bool, LedgerError>,
    ) -> Result<bool, LedgerError> {
        for other in Scope::of(self.store().truth(), self.fleet(), truck).trucks {
            if other != truck && !kept(other)? {
                return Ok(false);
            }
        }
        Ok(true)
    }

    /// The state of a unit: the kept one when it is fresh, else folded now.
    ///
    /// # Errors
    /// As any read.
    pub fn unit_state(&self, truck: TruckId) -> Result<UnitState, LedgerError> {
        let truth = self.store().truth();
        if let Some(body) = truth.unit_body(truck)?
            && self.all_kept(truck, |other| Ok(truth.unit_body(other)?.is_some()))?
            && let Some(state) = self.states().of(truck, body, folded::from_bytes)
        {
            return self.with_slips(state);
        }
        let state = self.noted(self.fold_unit(truck, i64::MAX))?;
        self.with_slips(state)
    }

    /// The state of every unit of the fleet, and of trucks of which only a book has come: one pass over the
    /// kept states, and only what was touched since is folded.
    ///
    /// # Errors
    /// As any read.
    pub fn all_unit_states(&self) -> Result<Vec<UnitState>, LedgerError> {
        let known = self.store().truth().known_units().map_err(LedgerError::from)?;
        let trucks = self.fleet().trucks.keys().copied().chain(known).collect();
        Ok(self.unit_states(&trucks)?.into_values().collect())
    }

    /// The states of these units, the kept ones read in one go.
    ///
    /// # Errors
    /// As any read.
    pub fn unit_states(
        &self,
        trucks: &BTreeSet<TruckId>,
    ) -> Result<BTreeMap<TruckId, UnitState>, LedgerError> {
        let mut states = BTreeMap::new();
        let kept = self.noted(self.store().truth().unit_bodies().map_err(LedgerError::from))?;
        let fresh: BTreeSet<TruckId> = kept.iter().map(|(truck, _)| *truck).collect();
        for (truck, body) in kept.into_iter().filter(|(truck, _)| trucks.contains(truck)) {
            if !self.all_kept(truck, |other| Ok(fresh.contains(&other)))? {
                continue;
            }
            states.extend(folded::from_bytes(&body).map(|state| (truck, state)));
        }
        for truck in trucks {
            if !states.contains_key(truck) {
                states.insert(*truck, self.noted(self.fold_unit(*truck, i64::MAX))?);
            }
        }
        self.with_slips_all(&mut states)?;
        Ok(states)
    }

    /// The state of a unit at an earlier moment: what its entries up to then add up to, as they are known now.
    ///
    /// # Errors
    /// As any read.
    pub fn unit_state_at(&self, truck: TruckId, upto_ms: i64) -> Result<UnitState, LedgerError> {
        let now = self.unit_state(truck)?;
        Ok(self.earlier_state(&now, upto_ms)?.unwrap_or(now))
    }

    /// The state at an earlier moment of a unit whose state now is at hand; none when it is the same.
    ///
    /// # Errors
    /// As any read.
    pub fn earlier_state(&self, now: &UnitState, upto_ms: i64) -> Result<Option<UnitState>, LedgerError> {
        if now.newest_ms <= upto_ms {
            return Ok(None);
        }
        self.noted(self.fold_unit(now.truck, upto_ms)).map(Some)
    }

    fn fold_unit(&self, truck: TruckId, upto_ms: i64) -> Result<UnitState, LedgerError> {
        let truth = self.store().truth();
        let fleet = self.fleet();
        let scope = Scope::of(self.store().truth(), fleet, truck);
        let entries = scope.bearing(upto_ms)?;
        let elsewhere = entries.iter().filter(|bearing| !scope.is_own(bearing)).map(|b| b.fact.at_ms).max();
        let newest_ms = truth.newest_of_unit(truck, upto_ms)?.max(elsewhere.unwrap_or(i64::MIN));
        let found_days: BTreeSet<i32> =
            entries.iter().filter(|b| is_inspection(&b.entry)).map(|b| b.fact.day).collect();
        let beside = inputs::sections_beside(&truth, truck, &found_days, upto_ms)?;
        let own = entries.iter().chain(&beside).filter(|bearing| scope.is_own(bearing));
        let covered = covered(own, fleet.numbers.covers());
        let looked = scope.of_kind(FactKind::LevelCheck, upto_ms)?;
        let told = (entries.as_slice(), beside.as_slice(), looked.as_slice());
        let (all, again) = defects::of_unit(&scope, told, &covered, upto_ms)?;
        let since = newest_ms.saturating_sub(KEPT_DAYS.saturating_mul(86_400_000));
        let mut lay_ups = laid::of_set(&entries);
        let judged = hours::judged(&scope, &entries, upto_ms)?;
        let estimates = hours::estimates(&entries);
        let served = services::rows(fleet, &entries, &judged, &estimates);
        let mut hours = hours::hours_now(&judged, newest_ms, fleet);
        hours.estimates = estimates;
        counted::add(&mut hours, &scope, (&judged, upto_ms))?;
        let worn = wear::worn(&scope, &hours::all_hours(&judged, &hours.estimates, fleet.zone), upto_ms)?;
        let decisions = services::decisions(&truth, &served)?;
        let mut clocks = match scope.is_without_set() {
            true => Vec::new(),
            false => services::clocks(&scope, &served, &decisions, &worn),
        };
        let campaigns = campaigns::of_unit(&scope, &served, &decisions, upto_ms);
        let mut locks = lock_outs(&all.defects);
        locks.extend(lay_ups.iter().map(lay_up::lock_out));
        locks.extend(campaigns.locks);
        locks.sort();
        lay_ups
            .retain(|spell| spell.returned.as_ref().is_none_or(|back| back.at.timestamp_millis() >= since));
        clocks.extend(campaigns.clocks);
        Ok(UnitState {
            truck,
            newest_ms,
            wrote_last: self.wrote_last(truck, newest_ms)?,
            wear: wear::used(&clocks, &worn, hours.due),
            called: wear::called(fleet, &entries, &served),
            oil: oil::oil(&scope, (&entries, &looked), (&judged, &clocks), upto_ms)?,
            other_meters: hours::other_meters(&scope, &entries, upto_ms)?,
            hours,
            clocks,
            campaigns: campaigns.now,
            locks: locks
                .into_iter()
                .filter(|lock| lock.ended.is_none_or(|at| at.timestamp_millis() >= since))
                .collect(),
            lay_ups,
            set_told: sets::last_told(&entries),
            again,
            defects: all.defects.into_iter().filter(|defect| is_recent(defect, since)).collect(),
            notes: notes::notes(&entries, newest_ms),
            cleared: notes::cleared(&entries, &served, fleet.programme_of(truck)),
            waiting: services::waiting(&entries),
            planned: services::planned(&entries),
            roster: roster::roster(&entries),
            top_ups: top_ups(&entries),
            services: services::recent(&entries, newest_ms),
        })
    }

    /// Whether a signed section of a pre-trip ends its walk, so that it covers what comes after it. A part of a walk
    /// covers nothing.
    ///
    /// # Errors
    /// As any read.
    pub fn ends_a_walk(&self, section: &FactRow) -> Result<bool, LedgerError> {
        // One that bears nothing is whole and found nothing: no need to read it.
        if !section.bears {
            return Ok(true);
        }
        let entry = inputs::read(&self.store().truth(), section.n)?;
        Ok(entry.is_some_and(|entry| match entry.fact {
            Fact::PreTripSection(section) => section.ends_the_walk(),
            _ => false,
        }))
    }

    fn wrote_last(&self, truck: TruckId, newest_ms: i64) -> Result<Option<WroteLast>, LedgerError> {
        let Some(newest) = DateTime::from_timestamp_millis(newest_ms) else { return Ok(None) };
        let newest = day_number(newest.with_timezone(&self.fleet().zone).date_naive());
        let (truth, shop) = (self.store().truth(), self.root().shop.id());
        // The newest day first: usually it answers, and no older one is read.
        for day in (newest.saturating_sub(WROTE_DAYS)..=newest).rev() {
            if let Some(device) = truth.wrote_last_on(truck, day, newest_ms, shop)? {
                return Ok(Some(WroteLast { day, device: device.0 }));
            }
        }
        Ok(None)
    }

    fn lock_rows(&self, state: &UnitState) -> Result<Vec<LockRow>, LedgerError> {
        let truth = self.store().truth();
        let mut rows = Vec::new();
        for lock in &state.locks {
            let opened = truth.by_id(sumpbook_trade::EntryId(lock.because.entry))?;
            // Placed again after a fork an entry has two rows: the choice must not hang on arrival.
            if let Some(held) = opened.iter().min_by_key(|held| held.row.hash) {
                rows.push(LockRow {
                    truck: state.truck,
                    part: lock.part.clone().into(),
                    opened: held.n,
                    since_ms: lock.since.timestamp_millis(),
                    ended_ms: lock.ended.map(|at| at.timestamp_millis()),
                });
            }
        }
        Ok(rows)
    }
}

/// What the pre-trips among these entries cover.
pub(super) fn covered<'a>(entries: impl Iterator<Item = &'a Bearing>, limit: TimeDelta) -> Vec<Coverage> {
    let (mut signed, mut ended) = (Vec::new(), Vec::new());
    for Bearing { fact, entry } in entries {
        let (at, id) = (entry.at.moment(), entry.id.0);
        let person = entry.person.map_or(Uuid::nil(), |p| p.0);
        match &entry.fact {
            // A part of a walk covers nothing; the signature that ends it does.
            Fact::PreTripSection(section) if section.ends_the_walk() && fact.judged == Judged::Counts => {
                signed.push(PreTrip { signed_at: at, entry: id, person });
            }
            Fact::EndOfDay(_) => ended.push(EndOfDay { at, entry: id, person }),
            _ => {}
        }
    }
    coverages(&signed, &ended, limit)
}

pub(super) fn is_inspection(entry: &Entry) -> bool {
    matches!(entry.fact, Fact::PreTripSection(_) | Fact::EndOfDay(_))
}

fn is_recent(defect: &Defect, since_ms: i64) -> bool {
    match &defect.state {
        DefectState::Closed { reviewed, certified } => {
            let closed = reviewed.as_ref().map_or(certified.at, |r| r.at);
            closed.timestamp_millis() >= since_ms
        }
        _ => true,
    }
}

fn top_ups(entries: &[Bearing]) -> Vec<TopUpNow> {
    let top_ups = entries.iter().rev().filter_map(|bearing| match &bearing.entry.fact {
        Fact::TopUp(what) => Some(TopUpNow {
            entry: bearing.entry.id,
            at: bearing.entry.at.moment(),
            person: bearing.entry.person,
            hours: bearing.entry.hours,
            what: what.clone(),
        }),
        _ => None,
    });
    top_ups.take(3).collect()
}
