//! What became of it: whoever told of a defect hears where it stands, without asking anybody.

use chrono::{NaiveDate, TimeDelta};
use serde::{Deserialize, Serialize};
use sumpbook_trade::defect::{Certified, Defect, DefectState, Said, Verdict};
use sumpbook_trade::record::DefectName;
use sumpbook_trade::{EntryId, PersonId, Stamp, TruckId};

use super::defect_row::{first_word, name, row_id};
use super::news::Standing;
use crate::fleet::Fleet;
use crate::state::UnitState;

/// Days for which it is told: from when it was told, and again from what the shop did about it.
const TOLD_DAYS: i64 = 7;

/// Where a defect that somebody told stands now, for the texts `became-...`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum BecameNow {
    /// The shop does not know yet.
    NotYetAtShop,
    /// The shop has it and has done nothing about it yet.
    AtShop,
    /// A visit is planned for it.
    Visit {
        /// On this day of the yard.
        day: NaiveDate,
    },
    /// The shop waits for a part.
    WaitingForPart {
        /// Which.
        part: String,
        /// Promised for this day.
        promised: Option<NaiveDate>,
    },
    /// Certified.
    Certified {
        /// Repaired, or repair not needed.
        verdict: Verdict,
        /// Who signed.
        by: Option<String>,
        /// In the shop's words.
        words: String,
    },
}

/// One defect and what became of it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct BecameRow {
    /// The defect's row id.
    pub id: String,
    /// Its unit.
    pub unit: TruckId,
    /// That unit's door number.
    pub door: String,
    /// The checklist's item, for the text `item-...`.
    pub item: String,
    /// Its place.
    pub place: Option<String>,
    /// Key of the word chosen, for the text `choice-...`.
    pub word: Option<String>,
    /// When this person told it, last.
    pub told: Stamp,
    /// Where it stands.
    pub now: BecameNow,
    /// Since when; none where nobody wrote that down.
    pub since: Option<Stamp>,
}

/// What became of the defects of a unit that this person told, in the order they were found.
pub(super) fn of_unit(
    fleet: &Fleet,
    state: &UnitState,
    person: PersonId,
    standing: &Standing,
    now: Stamp,
) -> Vec<BecameRow> {
    let rows = state.defects.iter().filter_map(|defect| row(fleet, state, defect, person, standing));
    rows.filter(|row| {
        let newest = row.since.map_or(row.told, |since| since.max(row.told));
        now.moment() - newest.moment() <= TimeDelta::days(TOLD_DAYS)
    })
    .collect()
}

fn row(
    fleet: &Fleet,
    state: &UnitState,
    defect: &Defect,
    person: PersonId,
    standing: &Standing,
) -> Option<BecameRow> {
    let own = defect.answers.iter().filter(|a| a.person == person.0 && matches!(a.said, Said::Defect { .. }));
    let told: Stamp = own.clone().map(|answer| answer.at).max()?.into();
    let named = |of: &DefectName| {
        of.item == defect.item
            && of.place == defect.place
            && defect.answers.iter().any(|answer| answer.entry == of.entry.0)
    };
    let (now, since) = match &defect.state {
        DefectState::AwaitingReview { certified } => certificate(fleet, certified),
        // Who signed for having read it has heard what became of it.
        DefectState::Closed { reviewed: Some(reviewed), .. } if reviewed.person == person.0 => return None,
        DefectState::Closed { certified, .. } => certificate(fleet, certified),
        DefectState::Open => {
            let wait = state.waiting.iter().filter(|wait| wait.what.defect.as_ref().is_some_and(named));
            let visit = state.planned.iter().filter(|visit| visit.defects.iter().any(named));
            match (wait.max_by_key(|wait| wait.at), visit.min_by_key(|visit| visit.day)) {
                (Some(wait), _) => {
                    let (part, promised) = (wait.what.part.clone(), wait.what.promised);
                    (BecameNow::WaitingForPart { part, promised }, Some(wait.at.into()))
                }
                (None, Some(visit)) => (BecameNow::Visit { day: visit.day }, Some(visit.at.into())),
                // One telling of it that is there is enough.
                (None, None) if own.clone().all(|a| standing.on_phone.contains(&EntryId(a.entry))) => {
                    (BecameNow::NotYetAtShop, None)
                }
                (None, None) => (BecameNow::AtShop, None),
            }
        }
    };
    Some(BecameRow {
        id: row_id(defect),
        unit: state.truck,
        door: fleet.door(state.truck),
        item: defect.item.clone(),
        place: defect.place.clone(),
        word: first_word(defect),
        told,
        now,
        since,
    })
}

fn certificate(fleet: &Fleet, certified: &Certified) -> (BecameNow, Option<Stamp>) {
    let by = name(fleet, certified.by);
    let now = BecameNow::Certified { verdict: certified.verdict, by, words: certified.words.clone() };
    (now, Some(certified.at.into()))
}
