//! What a person said of a unit that belongs to another one.

use serde::{Deserialize, Serialize};
use sumpbook_trade::fluid::Fluid;
use sumpbook_trade::record::Glass;
use sumpbook_trade::{Entry, EntryId, Fact, FactKind, Figure, PersonId, Stamp, Tenths, TruckId};

use crate::draft::may_be_moved;
use crate::judgement::Judged;
use crate::ledger::{Ledger, LedgerError, day_number};

/// Whose entries of which unit, and how far back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OtherUnitQuery {
    /// The unit they stand under now.
    pub unit: TruckId,
    /// Whose.
    pub person: PersonId,
    /// Days of the yard before today.
    pub days_back: u16,
}

/// An entry that can be moved, with what it says.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MovableRow {
    /// The entry: the row's id.
    pub id: EntryId,
    /// Its kind, for the text `kind-...`.
    pub kind: FactKind,
    /// When.
    pub at: Stamp,
    /// The meter's figure in it.
    pub hours: Option<Tenths>,
    /// The level it saw, or came to.
    pub glass: Option<Glass>,
    /// What was poured.
    pub fluid: Option<Fluid>,
    /// How much, each pour.
    pub volumes: Vec<Figure>,
    /// What the display showed, or what was said.
    pub words: Option<String>,
}

/// What can be moved.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OtherUnitScreen {
    /// The unit's door number.
    pub door: String,
    /// This person's entries of these days that can be moved, newest first.
    pub rows: Vec<MovableRow>,
}

/// What of a unit's entries a person may move to another unit.
///
/// # Errors
/// As reading the store.
pub fn other_unit(
    ledger: &Ledger,
    query: &OtherUnitQuery,
    now: Stamp,
) -> Result<OtherUnitScreen, LedgerError> {
    let fleet = ledger.fleet();
    let truth = ledger.store().truth();
    let today = day_number(fleet.yard_day(now));
    let from = today.saturating_sub(i32::from(query.days_back));
    let mut rows = Vec::new();
    for fact in truth.facts_of_unit_days(query.unit, from, today + 1)? {
        if fact.judged != Judged::Counts || fact.person != Some(query.person) {
            continue;
        }
        let held = truth.entry(fact.n)?;
        let entry = held.and_then(|held| Entry::from_payload(&held.row.payload).ok());
        rows.extend(entry.filter(|entry| may_be_moved(&entry.fact)).map(|entry| says(&entry)));
    }
    rows.reverse();
    Ok(OtherUnitScreen { door: fleet.door(query.unit), rows })
}

/// An entry of this person's that can be moved from that unit: one that counts there. None for any other.
///
/// # Errors
/// As reading the store.
pub fn movable(
    ledger: &Ledger,
    unit: TruckId,
    person: PersonId,
    id: EntryId,
) -> Result<Option<Entry>, LedgerError> {
    let truth = ledger.store().truth();
    for held in truth.by_id(id)? {
        let counts = truth.fact(held.n)?.is_some_and(|fact| fact.judged == Judged::Counts);
        let entry = Entry::from_payload(&held.row.payload).ok().filter(|_| counts);
        let own = entry.filter(|entry| entry.unit == Some(unit) && entry.person == Some(person));
        if let Some(entry) = own.filter(|entry| may_be_moved(&entry.fact)) {
            return Ok(Some(entry));
        }
    }
    Ok(None)
}

/// What an entry says, as far as a row can hold it.
pub(super) fn says(entry: &Entry) -> MovableRow {
    let mut row = MovableRow {
        id: entry.id,
        kind: entry.fact.kind(),
        at: entry.at,
        hours: entry.hours,
        glass: None,
        fluid: None,
        volumes: Vec::new(),
        words: entry.note.clone(),
    };
    match &entry.fact {
        Fact::HourReading(reading) => row.hours = Some(reading.figure),
        Fact::LevelCheck(level) => row.glass = Some(level.glass),
        Fact::TopUp(top_up) => {
            row.fluid = Some(top_up.fluid);
            row.volumes = top_up.pours.iter().map(|pour| pour.volume).collect();
            row.glass = top_up.after;
        }
        Fact::DisplayNote(note) => row.words = Some(note.as_shown.clone()),
        _ => {}
    }
    row
}
