//! Which entries are a unit's: about the road its truck's own, about the air those of the set that stands on it now,
//! on whatever truck that set stood.

use sumpbook_trade::checklist::Template;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::procedure::is_step_item;
use sumpbook_trade::record::{Answer, WaitingForPart};
use sumpbook_trade::{Entry, Fact, FactKind, SetId, TruckId};

use super::inputs::{self, Bearing};
use crate::fleet::Fleet;
use crate::ledger::{Ledger, LedgerError};
use crate::store::{FactRow, StoreError, Truth};

/// A unit as its state is folded: the truck, and the set that goes with it.
pub(crate) struct Scope<'a> {
    pub(super) truth: Truth<'a>,
    pub(super) fleet: &'a Fleet,
    pub(super) truck: TruckId,
    set: Option<SetId>,
    /// Every truck the set ever stood on, this one too.
    pub(crate) trucks: Vec<TruckId>,
    /// No set was ever moved from or to this truck: all its entries are its own.
    plain: bool,
}

impl<'a> Scope<'a> {
    pub(crate) fn of(truth: Truth<'a>, fleet: &'a Fleet, truck: TruckId) -> Scope<'a> {
        let set = fleet.set_on(truck).map(|set| set.set);
        let mut trucks = set.map(|set| fleet.trucks_of(set)).unwrap_or_default();
        if !trucks.contains(&truck) {
            trucks.push(truck);
        }
        let plain = trucks.len() == 1 && fleet.sets_of(truck).all(|stood| Some(stood) == set);
        Scope { truth, fleet, truck, set, trucks, plain }
    }

    /// Whether a set that is known stood on this truck and none does now: what is about the air went with it.
    pub(super) fn is_without_set(&self) -> bool {
        self.set.is_none() && self.fleet.sets_of(self.truck).next().is_some()
    }

    /// The truck the set first stood on: from it the set has its beginning.
    pub(super) fn first_truck(&self) -> TruckId {
        let first = self.set.and_then(|set| self.fleet.first_truck_of(set));
        first.unwrap_or(self.truck)
    }

    /// Whether an entry on this truck, of this moment, is about the set.
    fn of_set(&self, fact: &FactRow) -> bool {
        let Some(truck) = fact.truck else { return false };
        // Where nobody knows which set stood there, it was none of those that are known.
        self.fleet.set_at(truck, fact.at_ms) == self.set
    }

    /// Facts of every truck of the set, as far as they are about it.
    fn air(
        &self,
        read: impl Fn(TruckId) -> Result<Vec<FactRow>, StoreError>,
    ) -> Result<Vec<FactRow>, LedgerError> {
        if self.plain {
            return Ok(read(self.truck)?);
        }
        let mut facts = Vec::new();
        for truck in &self.trucks {
            facts.extend(read(*truck)?.into_iter().filter(|fact| self.of_set(fact)));
        }
        facts.sort_by_key(|fact| (fact.at_ms, fact.n));
        Ok(facts)
    }

    /// Readings of the set's meter, up to a moment.
    pub(super) fn hour_facts(&self, upto_ms: i64) -> Result<Vec<FactRow>, LedgerError> {
        self.air(|truck| self.truth.hour_facts(truck, upto_ms))
    }

    /// Facts of one kind from where the set stood, up to a moment.
    pub(super) fn facts_of_kind(&self, kind: FactKind, upto_ms: i64) -> Result<Vec<FactRow>, LedgerError> {
        let code = kind.code().unwrap_or(0);
        self.air(|truck| self.truth.facts_of_kind(truck, code, upto_ms))
    }

    /// The newest facts of one kind from where the set stood, up to a moment, at most `most` of each truck.
    pub(super) fn newest_air(
        &self,
        kind: FactKind,
        upto_ms: i64,
        most: i64,
    ) -> Result<Vec<FactRow>, LedgerError> {
        let code = kind.code().unwrap_or(0);
        self.air(|truck| self.truth.newest_facts_by(truck, code, upto_ms, most))
    }

    /// Entries of one kind about the set that count and do not bear by themselves.
    pub(super) fn of_kind(&self, kind: FactKind, upto_ms: i64) -> Result<Vec<Bearing>, LedgerError> {
        if self.plain {
            return inputs::of_kind(&self.truth, self.truck, kind, upto_ms);
        }
        let mut found = Vec::new();
        for truck in &self.trucks {
            let all = inputs::of_kind(&self.truth, *truck, kind, upto_ms)?;
            found.extend(all.into_iter().filter(|bearing| self.of_set(&bearing.fact)));
        }
        found.sort_by_key(|bearing| (bearing.fact.at_ms, bearing.fact.id));
        Ok(found)
    }

    /// Everything that bears on the unit's state: of its truck what is about the road, of its set what is about the
    /// air.
    pub(super) fn bearing(&self, upto_ms: i64) -> Result<Vec<Bearing>, LedgerError> {
        if self.plain {
            return inputs::bearing(&self.truth, self.truck, upto_ms);
        }
        let mut found = Vec::new();
        for truck in &self.trucks {
            for bearing in inputs::bearing(&self.truth, *truck, upto_ms)? {
                found.extend(self.part_of(bearing, *truck == self.truck));
            }
        }
        found.sort_by_key(|bearing| (bearing.fact.at_ms, bearing.fact.id));
        Ok(found)
    }

    /// Whether an entry is of this unit's own truck: only such a walk covers it.
    pub(super) fn is_own(&self, bearing: &Bearing) -> bool {
        bearing.fact.truck == Some(self.truck)
    }

    /// Whether all entries of the truck are its own, and no other's.
    pub(super) fn is_plain(&self) -> bool {
        self.plain
    }

    /// Whether anything of an entry is this unit's.
    pub(super) fn shows(&self, fact: &FactRow, entry: &Entry) -> bool {
        let own = fact.truck == Some(self.truck);
        if self.plain || (own && self.of_set(fact)) {
            return own;
        }
        let halves = match &entry.fact {
            Fact::PreTripSection(section) => both(&section.answers),
            Fact::EndOfDay(report) => both(&report.defects),
            Fact::Certificate(of) => {
                let air = is_item_of_set(&of.defect.item);
                (!air, air)
            }
            // What they speak of is seldom told by them alone: they stay, and go along.
            Fact::Review(_) | Fact::Decision(_) | Fact::Correction(_) => (true, true),
            other => (!other.is_about_air(), other.is_about_air()),
        };
        let (road, air) = halves;
        if own { road } else { air && self.of_set(fact) }
    }

    /// Of the answers of one of this truck's walks, those about its road and about the set that stands on it now.
    pub(super) fn keep_own(&self, fact: &FactRow, answers: &mut Vec<Answer>) {
        if !self.plain && !self.of_set(fact) {
            answers.retain(|answer| !is_of_set(answer));
        }
    }

    /// What of an entry is this unit's; none of it: none.
    fn part_of(&self, bearing: Bearing, own: bool) -> Option<Bearing> {
        let air = self.of_set(&bearing.fact);
        match (own, air) {
            (true, true) => Some(bearing),
            (true, false) => only(self.fleet, bearing, Half::Road),
            (false, true) => only(self.fleet, bearing, Half::Air),
            (false, false) => None,
        }
    }
}

impl Ledger {
    /// The newest facts of one kind about the set that stands on a truck, wherever it stood then, newest first, at
    /// most `most`.
    ///
    /// # Errors
    /// As any read.
    pub fn newest_air_facts(
        &self,
        truck: TruckId,
        kind: FactKind,
        most: i64,
    ) -> Result<Vec<FactRow>, LedgerError> {
        let code = kind.code().unwrap_or(0);
        let scope = Scope::of(self.store().truth(), self.fleet(), truck);
        let mut facts = scope.air(|truck| scope.truth.newest_facts(truck, code, most))?;
        facts.sort_by_key(|fact| std::cmp::Reverse((fact.at_ms, fact.n)));
        facts.truncate(usize::try_from(most).unwrap_or(usize::MAX));
        Ok(facts)
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Half {
    Road,
    Air,
}

/// Whether answers have any about the road, and any about the air. A walk without an answer is the truck's.
fn both(answers: &[Answer]) -> (bool, bool) {
    let air = answers.iter().filter(|answer| is_of_set(answer)).count();
    (answers.is_empty() || air < answers.len(), air > 0)
}

/// Whether an answer is about the compressor set.
fn is_of_set(answer: &Answer) -> bool {
    Template::common_practice().is_ok_and(|template| template.is_of_set(&answer.item))
}

/// The same of the item of a defect, which may be a step of a procedure.
fn is_item_of_set(item: &str) -> bool {
    is_step_item(item) || Template::common_practice().is_ok_and(|template| template.is_of_set(item))
}

/// One half of an entry: of an inspection the answers about it, else the whole or nothing.
fn only(fleet: &Fleet, mut bearing: Bearing, half: Half) -> Option<Bearing> {
    let keep = |answers: &mut Vec<Answer>| answers.retain(|answer| is_of_set(answer) == (half == Half::Air));
    // A campaign of trucks was done on the truck, every other task on the set.
    let here = |task: &TaskId| fleet.is_of_truck(task) == (half == Half::Road);
    match &mut bearing.entry.fact {
        Fact::ServiceDone(done) => {
            let said_none = done.tasks.is_empty();
            done.tasks.retain(here);
            if half == Half::Road {
                done.oil = None;
            }
            let of_set = half == Half::Air && (said_none || done.oil.is_some());
            return (of_set || !done.tasks.is_empty()).then_some(bearing);
        }
        Fact::VisitPlan(plan) => {
            plan.tasks.retain(here);
            if half == Half::Road {
                plan.defects.clear();
            }
            return (!plan.tasks.is_empty() || !plan.defects.is_empty()).then_some(bearing);
        }
        Fact::WaitingForPart(WaitingForPart { task: Some(task), .. }) => {
            return here(task).then_some(bearing);
        }
        Fact::WaitingForPart(WaitingForPart { defect: Some(defect), .. }) => {
            return (is_item_of_set(&defect.item) == (half == Half::Air)).then_some(bearing);
        }
        Fact::PreTripSection(section) => keep(&mut section.answers),
        Fact::EndOfDay(report) => keep(&mut report.defects),
        // What they speak of is here or it is not.
        Fact::Certificate(_) | Fact::Review(_) | Fact::Decision(_) | Fact::Correction(_) => {}
        _ => return (bearing.entry.fact.is_about_air() == (half == Half::Air)).then_some(bearing),
    }
    Some(bearing)
}
