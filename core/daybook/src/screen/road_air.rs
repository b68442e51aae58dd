//! Road and air, each by itself: what is on record, since when, why.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};
use sumpbook_trade::campaign::CAMPAIGN_ITEM;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::defect::{LockOut, LockPart, Said};
use sumpbook_trade::lay_up::{LAID_UP, LIST_OPEN, is_lay_up};
use sumpbook_trade::{EntryId, Stamp, TruckId};

use super::defect_row::{DefectRow, name};
use super::news::{Standing, count};
use crate::fleet::Fleet;
use crate::state::UnitState;

/// What is on record. Never "safe": no lock on record says only that.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LockState {
    /// No lock on record.
    NoLockOnRecord,
    /// Certified; locked until the next driver reviews that.
    AwaitingReview,
    /// Locked.
    Locked,
}

impl LockState {
    /// Key of its words.
    pub fn text_key(self) -> &'static str {
        match self {
            LockState::NoLockOnRecord => "lock-none-on-record",
            LockState::AwaitingReview => "lock-awaiting-review",
            LockState::Locked => "lock-locked",
        }
    }
}

/// One reason of a lock: a defect, that the set is laid up, or a maker's campaign, which has no word.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LockWhy {
    /// The row of the defect: the same id as on the last report. Of a lay-up, its entry.
    pub id: String,
    /// The checklist's item; `laid-up` of a lay-up.
    pub item: String,
    /// Its place.
    pub place: Option<String>,
    /// Key of the word chosen first.
    pub word: Option<String>,
    /// Who said it first.
    pub by: Option<String>,
}

/// One part of a unit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PartNow {
    /// Which.
    pub part: LockPart,
    /// What is on record.
    pub state: LockState,
    /// The earliest lock's own time.
    pub since: Option<Stamp>,
    /// Why, earliest first.
    pub why: Vec<LockWhy>,
}

/// Road and air of a unit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RoadAir {
    /// The road.
    pub road: PartNow,
    /// The air.
    pub air: PartNow,
    /// Outlets that are locked, by name.
    pub outlets: Vec<PartNow>,
    /// How many outlets the unit has by name.
    pub outlets_of: u32,
}

impl RoadAir {
    pub(super) fn of(fleet: &Fleet, truck: TruckId, state: &UnitState, now: Stamp) -> RoadAir {
        // A lock of a phone whose clock runs ahead is not yet "since", and stands all the same. A campaign's day that is
        // still to come is no clock's matter.
        let ahead = |lock: &LockOut| lock.is_of_campaign() && now.moment() <= lock.since;
        let stands = |lock: &&LockOut| stands(lock, now) && !ahead(lock);
        let standing: Vec<&LockOut> = state.locks.iter().filter(stands).collect();
        let part = |part: LockPart| PartNow::of(part, &standing, state, fleet);
        let mut outlets: Vec<LockPart> = standing
            .iter()
            .filter(|lock| matches!(lock.part, LockPart::Outlet(_)))
            .map(|lock| lock.part.clone())
            .collect();
        outlets.sort();
        outlets.dedup();
        RoadAir {
            road: part(LockPart::Road),
            air: part(LockPart::Air),
            outlets: outlets.into_iter().map(part).collect(),
            outlets_of: fleet.trucks.get(&truck).map_or(0, |t| count(t.features.valves.len())),
        }
    }
}

fn stands(lock: &LockOut, now: Stamp) -> bool {
    lock.ended.is_none_or(|at| now.moment() < at)
}

impl RoadAir {
    /// The parts that are locked and not certified, in order.
    pub(super) fn locked(self) -> Vec<PartNow> {
        let parts = [self.road, self.air].into_iter().chain(self.outlets);
        parts.filter(|part| part.state == LockState::Locked).collect()
    }
}

/// What of a unit is locked by nothing but findings that the shop has not acknowledged: it does not know of the lock.
pub(super) fn locked_only_here(state: &UnitState, standing: &Standing, now: Stamp) -> Vec<LockPart> {
    let here = |entry| standing.on_phone.contains(&EntryId(entry));
    let only_here = |lock: &LockOut| match state.defects.iter().find(|d| d.reference == lock.because) {
        // Told at the shop as a note, and worse on this phone: the shop knows of the defect and of no lock.
        Some(defect) => {
            let locks =
                |said: &Said| matches!(said, Said::Defect { parts, .. } if parts.contains(&lock.part));
            defect.answers.iter().filter(|a| locks(&a.said)).all(|a| here(a.entry))
        }
        None => here(lock.because.entry),
    };
    let (mut told, mut untold) = (BTreeSet::new(), BTreeSet::new());
    for lock in state.locks.iter().filter(|lock| stands(lock, now) && lock.certified.is_none()) {
        let of = if only_here(lock) { &mut untold } else { &mut told };
        of.insert(lock.part.clone());
    }
    untold.difference(&told).cloned().collect()
}

impl PartNow {
    fn of(part: LockPart, standing: &[&LockOut], state: &UnitState, fleet: &Fleet) -> PartNow {
        let locks: Vec<&&LockOut> = standing.iter().filter(|lock| lock.part == part).collect();
        let now = locks.iter().map(|lock| match lock.certified {
            Some(_) => LockState::AwaitingReview,
            None => LockState::Locked,
        });
        PartNow {
            state: now.max().unwrap_or(LockState::NoLockOnRecord),
            since: locks.iter().map(|lock| lock.since).min().map(Stamp::from),
            why: locks.iter().filter_map(|lock| why(lock, state, fleet)).collect(),
            part,
        }
    }
}

fn why(lock: &LockOut, state: &UnitState, fleet: &Fleet) -> Option<LockWhy> {
    if is_lay_up(lock) {
        let spell = state.lay_ups.iter().find(|spell| spell.entry == lock.because.entry)?;
        return Some(LockWhy {
            id: spell.entry.to_string(),
            item: LAID_UP.to_owned(),
            place: None,
            word: Some(LIST_OPEN.to_owned()),
            by: spell.person.and_then(|person| name(fleet, person)),
        });
    }
    if lock.is_of_campaign() {
        return campaign_why(lock, fleet);
    }
    let defect = state.defects.iter().find(|defect| defect.reference == lock.because)?;
    let row = DefectRow::of(defect, fleet);
    let first = row.said.iter().find(|said| !said.ok);
    Some(LockWhy {
        word: first.and_then(|said| said.word.clone()),
        by: first.and_then(|said| said.by.clone()),
        id: row.id,
        item: row.item,
        place: row.place,
    })
}

/// A campaign stands where the item of a defect does, and what is to be done where its place does.
fn campaign_why(lock: &LockOut, fleet: &Fleet) -> Option<LockWhy> {
    let name = lock.because.place.as_deref()?;
    let told = fleet.campaigns.get(&TaskId::of_campaign(name)).and_then(|campaign| campaign.told.last());
    let words = told.map(|told| format!("{name}: {}", told.what.words));
    let by = told.and_then(|told| told.by).and_then(|by| fleet.person_name(by));
    Some(LockWhy {
        id: format!("{}/{CAMPAIGN_ITEM}/{name}", lock.because.entry),
        item: CAMPAIGN_ITEM.to_owned(),
        place: Some(words.unwrap_or_else(|| name.to_owned())),
        word: None,
        by: by.map(str::to_owned),
    })
}
