//! A unit's entries one by one, for whoever shows them: of its truck what is about the road, of its set what is about
//! the air, wherever the set stood then.

use std::collections::BTreeSet;

use sumpbook_trade::record::PreTripSection;
use sumpbook_trade::{Entry, FactKind, TruckId};

use super::inputs;
use super::scope::Scope;
use crate::ledger::{Ledger, LedgerError};
use crate::store::FactRow;

/// A page of a unit's entries.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct UnitHistory {
    /// How many there are in all.
    pub count: i64,
    /// Those of the page, newest first. One recorded on another truck has that truck.
    pub facts: Vec<FactRow>,
    /// Entries of this truck's book that are about the air of a set that stands elsewhere now, or of one before.
    pub gone: i64,
    /// The trucks on which those sets stand now.
    pub gone_to: BTreeSet<TruckId>,
}

impl Ledger {
    /// A unit's entries, newest first: at most `most` of them after the first `skip`.
    ///
    /// # Errors
    /// As any read.
    pub fn unit_history(&self, truck: TruckId, skip: i64, most: i64) -> Result<UnitHistory, LedgerError> {
        let truth = self.store().truth();
        let scope = Scope::of(self.store().truth(), self.fleet(), truck);
        if scope.is_plain() {
            let (count, facts) = (truth.count_of_unit(truck)?, truth.facts_of_unit(truck, skip, most)?);
            return Ok(UnitHistory { count, facts, ..UnitHistory::default() });
        }
        let mut history = UnitHistory::default();
        for other in &scope.trucks {
            for fact in truth.facts_of_unit(*other, 0, i64::MAX)? {
                // What does not read says nothing of a set: it stays with its book.
                let shows = match inputs::read(&truth, fact.n)? {
                    Some(entry) => scope.shows(&fact, &entry),
                    None => *other == truck,
                };
                if shows {
                    history.facts.push(fact);
                } else if *other == truck {
                    history.gone += 1;
                    let set = self.fleet().set_at(truck, fact.at_ms);
                    history.gone_to.extend(set.and_then(|set| self.fleet().sets.get(&set)?.on));
                }
            }
        }
        history.facts.sort_by_key(|fact| std::cmp::Reverse((fact.at_ms, fact.n)));
        history.count = i64::try_from(history.facts.len()).unwrap_or(i64::MAX);
        let (skip, most) = (usize::try_from(skip).unwrap_or(usize::MAX), usize::try_from(most).unwrap_or(0));
        history.facts = history.facts.into_iter().skip(skip).take(most).collect();
        Ok(history)
    }

    /// Facts that carry hours of the set's meter up to a moment, those that do not count too, in the order of their
    /// times.
    ///
    /// # Errors
    /// As any read.
    pub fn unit_hour_facts(&self, truck: TruckId, upto_ms: i64) -> Result<Vec<FactRow>, LedgerError> {
        Scope::of(self.store().truth(), self.fleet(), truck).hour_facts(upto_ms)
    }

    /// A unit's newest entries of one kind, newest first, out of the newest `most` of each truck its set stood on.
    ///
    /// # Errors
    /// As any read.
    pub fn unit_entries(
        &self,
        truck: TruckId,
        kind: FactKind,
        most: i64,
    ) -> Result<Vec<(FactRow, Entry)>, LedgerError> {
        let truth = self.store().truth();
        let scope = Scope::of(self.store().truth(), self.fleet(), truck);
        let mut found = Vec::new();
        for other in &scope.trucks {
            for fact in truth.newest_facts(*other, kind.code().unwrap_or(0), most)? {
                let entry = inputs::read(&truth, fact.n)?;
                found.extend(entry.filter(|entry| scope.shows(&fact, entry)).map(|entry| (fact, entry)));
            }
        }
        found.sort_by_key(|(fact, _)| std::cmp::Reverse((fact.at_ms, fact.n)));
        Ok(found)
    }

    /// A walk of the truck with what it says of another set left out: that set took it along.
    pub(crate) fn of_this_set(&self, truck: TruckId, fact: &FactRow, section: &mut PreTripSection) {
        let scope = Scope::of(self.store().truth(), self.fleet(), truck);
        scope.keep_own(fact, &mut section.answers);
    }

    /// The trucks whose books tell of a unit: its own, and those its set stood on.
    pub(crate) fn trucks_of_unit(&self, truck: TruckId) -> Vec<TruckId> {
        Scope::of(self.store().truth(), self.fleet(), truck).trucks
    }
}
