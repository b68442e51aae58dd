//! The walk of a draft: its planned stops, who answered what, and how each stop is marked.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::{Line, PlannedStop, Template, plan, plan_second_driver};
use sumpbook_trade::record::{Answer, AnswerKind, PreTripSection};
use sumpbook_trade::{Entry, Fact, FactKind, Stamp, TruckId, WalkId};

use crate::draft::{Elsewhere, PreTripDraft, place_of};
use crate::judgement::Judged;
use crate::ledger::{Ledger, LedgerError, day_number};

/// How a stop is marked on the line round the truck.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum StopMark {
    /// Lines are open.
    ToCome,
    /// Every line is answered.
    Done,
    /// A defect was found here.
    Defect,
    /// Something could not be checked.
    CouldNotCheck,
    /// Somebody else did all of it.
    ByOther,
}

/// An answer somebody else signed in the same walk.
#[derive(Clone, Debug)]
pub(super) struct OtherAnswer {
    pub(super) answer: Answer,
    pub(super) by: Option<String>,
    pub(super) at: Stamp,
}

/// The stops of a draft's walk as they are planned, and the lines that somebody else answered in it: what answering
/// together and signing ask for.
///
/// # Errors
/// As reading the store.
pub fn walk_of(
    ledger: &Ledger,
    template: &Template,
    draft: &PreTripDraft,
    now: Stamp,
) -> Result<(Vec<PlannedStop>, Elsewhere), LedgerError> {
    let walk = Walk::of(ledger, template, draft, now)?;
    let elsewhere = walk.elsewhere();
    Ok((walk.stops, elsewhere))
}

/// Every signed part of a walk within these days of the yard that counts, in order of time.
pub(super) fn signed_parts(
    ledger: &Ledger,
    unit: TruckId,
    walk: WalkId,
    (from, to): (i32, i32),
) -> Result<Vec<(Entry, PreTripSection)>, LedgerError> {
    let truth = ledger.store().truth();
    let mut parts = Vec::new();
    for fact in truth.facts_of_unit_days(unit, from, to)? {
        if FactKind::from_code(fact.kind) != FactKind::PreTripSection || fact.judged != Judged::Counts {
            continue;
        }
        let held = truth.entry(fact.n)?;
        let Some(entry) = held.and_then(|held| Entry::from_payload(&held.row.payload).ok()) else { continue };
        if let Fact::PreTripSection(section) = &entry.fact
            && section.walk == walk
        {
            let section = section.clone();
            parts.push((entry, section));
        }
    }
    Ok(parts)
}

/// A draft's walk.
pub(super) struct Walk {
    pub(super) stops: Vec<PlannedStop>,
    others: BTreeMap<(String, Option<String>), OtherAnswer>,
}

impl Walk {
    pub(super) fn of(
        ledger: &Ledger,
        template: &Template,
        draft: &PreTripDraft,
        now: Stamp,
    ) -> Result<Walk, LedgerError> {
        let fleet = ledger.fleet();
        let features = fleet.trucks.get(&draft.unit).map(|truck| truck.features.clone()).unwrap_or_default();
        let from = day_number(fleet.yard_day(draft.begun)) - 1;
        let to = day_number(fleet.yard_day(now)) + 1;
        let mut others = BTreeMap::new();
        for (entry, section) in signed_parts(ledger, draft.unit, draft.walk, (from, to))? {
            let by = entry.person.and_then(|p| fleet.person_name(p)).map(str::to_owned);
            for answer in section.answers {
                let key = (answer.item.clone(), answer.place.clone());
                others.insert(key, OtherAnswer { answer, by: by.clone(), at: entry.at });
            }
        }
        let stops = match draft.follows {
            Some(_) => plan_second_driver(template, &features),
            None => plan(template, &features),
        };
        Ok(Walk { stops, others })
    }

    /// Lines that somebody else answered.
    pub(super) fn elsewhere(&self) -> Elsewhere {
        self.others.keys().cloned().collect()
    }

    /// What somebody else answered to a line.
    pub(super) fn other(&self, line: &Line) -> Option<&OtherAnswer> {
        match place_of(line) {
            None => self.others.iter().find(|((item, _), _)| *item == line.item).map(|(_, other)| other),
            place => self.others.get(&(line.item.clone(), place)),
        }
    }

    /// How a stop is marked.
    pub(super) fn mark(&self, draft: &PreTripDraft, stop: &PlannedStop) -> StopMark {
        let answers: Vec<Option<&Answer>> = stop
            .lines
            .iter()
            .map(|line| draft.answer_to(line).or_else(|| self.other(line).map(|other| &other.answer)))
            .collect();
        let any = |kind: AnswerKind| answers.iter().flatten().any(|answer| answer.answer == kind);
        if any(AnswerKind::Defect) {
            StopMark::Defect
        } else if answers.iter().any(Option::is_none) {
            StopMark::ToCome
        } else if any(AnswerKind::CouldNotCheck) {
            StopMark::CouldNotCheck
        } else if stop.lines.iter().all(|line| draft.answer_to(line).is_none()) {
            StopMark::ByOther
        } else {
            StopMark::Done
        }
    }
}
