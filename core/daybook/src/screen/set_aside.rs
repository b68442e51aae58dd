//! One entry that is set aside: the whole reason, what it says, who said what about it, what to do.

use serde::{Deserialize, Serialize};
use sumpbook_trade::{Entry, EntryId, Fact, Stamp, TruckId};

use super::defect_row::name;
use super::figures::ReadingRow;
use super::news::Standing;
use super::other_unit::{MovableRow, says};
use super::where_it_is::{Aside, aside, struck_of};
use crate::ledger::{Ledger, LedgerError};

/// What a person said about an entry: a decision of the shop, a correction, that it belongs to another unit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct AboutRow {
    /// Its entry: the row's id.
    pub id: EntryId,
    /// When.
    pub at: Stamp,
    /// Who; none when nobody here knows the name.
    pub by: Option<String>,
    /// Why, in their own words.
    pub words: Option<String>,
    /// The unit it belongs to, by its door number.
    pub belongs_to: Option<String>,
}

/// An entry that is set aside.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SetAsideScreen {
    /// The entry.
    pub id: EntryId,
    /// Its unit; none for a matter of the fleet.
    pub unit: Option<TruckId>,
    /// That unit's door number.
    pub door: Option<String>,
    /// What it says; none where this program cannot read it.
    pub says: Option<MovableRow>,
    /// Who wrote it.
    pub by: Option<String>,
    /// Why it is set aside, for the texts `aside-why-...` and, what to do, `aside-do-...`; none: it counts again.
    pub why: Option<Aside>,
    /// The figure that does not fit, with the most the meter could show then.
    pub reading: Option<ReadingRow>,
    /// What may have happened to that figure, for the texts `hint-...`.
    pub hints: Vec<String>,
    /// What was said about it, in order of time.
    pub about: Vec<AboutRow>,
}

/// One of this phone's entries that is set aside; none when it is not held here.
///
/// # Errors
/// As reading the store.
pub fn set_aside(
    ledger: &Ledger,
    id: EntryId,
    standing: &Standing,
) -> Result<Option<SetAsideScreen>, LedgerError> {
    let (fleet, truth) = (ledger.fleet(), ledger.store().truth());
    let mut own = truth.by_id(id)?.into_iter().filter(|held| held.row.actor.key() == ledger.own_key().id());
    let Some(held) = own.next() else { return Ok(None) };
    let Some(fact) = truth.fact(held.n)? else { return Ok(None) };
    let entry = Entry::from_payload(&held.row.payload).ok();
    let state = fact.truck.map(|truck| ledger.unit_state(truck)).transpose()?;
    let why = aside(standing, id, fact.judged, state.as_ref().map(struck_of).as_ref());
    let hours = state.map(|state| state.hours);
    let struck = hours.as_ref().and_then(|hours| hours.struck.iter().find(|reading| reading.entry == id));
    let questions = hours.iter().flat_map(|hours| &hours.questions);
    let asked = questions.filter(|question| question.disputing.iter().any(|reading| reading.entry == id));
    let mut about = Vec::new();
    for (by, _, _) in truth.decided(id)? {
        let said = truth.entry(by)?.and_then(|held| Entry::from_payload(&held.row.payload).ok());
        about.extend(said.map(|entry| AboutRow {
            id: entry.id,
            at: entry.at,
            by: entry.person.and_then(|person| name(fleet, person.0)),
            words: words_of(&entry.fact),
            belongs_to: match &entry.fact {
                Fact::OtherUnit(other) => Some(fleet.door(other.unit)),
                _ => None,
            },
        }));
    }
    about.sort_by_key(|row| (row.at, row.id));
    Ok(Some(SetAsideScreen {
        id,
        unit: fact.truck,
        door: fact.truck.map(|truck| fleet.door(truck)),
        by: fact.person.and_then(|person| name(fleet, person.0)),
        says: entry.as_ref().map(says),
        why,
        reading: struck.map(ReadingRow::from),
        hints: asked.flat_map(|question| question.hints.iter().cloned()).collect(),
        about,
    }))
}

fn words_of(fact: &Fact) -> Option<String> {
    let words = match fact {
        Fact::Decision(decision) => &decision.why,
        Fact::LateAccepted(late) => &late.why,
        Fact::Correction(correction) => &correction.why,
        _ => return None,
    };
    Some(words.clone()).filter(|words| !words.is_empty())
}
