//! Entries as rows: what every kind of record has in common.

use chrono::SecondsFormat;
use sumpbook_daybook::book::BookId;
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::store::HeldEntry;
use sumpbook_trade::{Entry, FactKind, PersonId, Stamp, TruckId};

use super::{Cell, Of};
use crate::ShopError;
use crate::sheet::{Yard, key};

/// An entry with what became of it.
pub(super) struct Item {
    pub(super) door: String,
    pub(super) held: HeldEntry,
    pub(super) entry: Entry,
    pub(super) judged: Judged,
}

/// Every entry of these kinds about these units, by unit and time; void ones too. No kinds: every kind, those of a
/// newer version too.
pub(super) fn items(ledger: &Ledger, of: Of<'_>, kinds: &[FactKind]) -> Result<Vec<Item>, ShopError> {
    let truth = ledger.store().truth();
    let mut items = Vec::new();
    for book in truth.books()? {
        let BookId::Truck { truck, .. } = book else { continue };
        if !of.holds(truck) {
            continue;
        }
        for held in truth.of_book(book)? {
            let Ok(entry) = Entry::from_payload(&held.row.payload) else { continue };
            if kinds.is_empty() || kinds.contains(&entry.fact.kind()) {
                let judged = truth.fact(held.n)?.map_or(Judged::Unreadable, |fact| fact.judged);
                let door = ledger.fleet().door(entry.unit.unwrap_or(truck));
                items.push(Item { door, held, entry, judged });
            }
        }
    }
    items.sort_by(|a, b| {
        (&a.door, a.entry.at.unix_ms(), a.held.row.id).cmp(&(&b.door, b.entry.at.unix_ms(), b.held.row.id))
    });
    Ok(items)
}

/// Heads of the columns before a kind's own.
pub(super) const BEFORE: [&str; 3] = ["Unit", "Time (UTC)", "Time (yard)"];

/// Heads of the columns after them.
pub(super) const AFTER: [&str; 12] = [
    "Hours (h)",
    "Person",
    "With",
    "PIN given",
    "Device",
    "Source",
    "Void",
    "Set aside",
    "Came to the shop (UTC)",
    "Set serial",
    "Note",
    "Entry",
];

impl Item {
    pub(super) fn before(&self, yard: &Yard) -> Vec<Cell> {
        let [utc, local] = times(yard, self.entry.at);
        vec![Cell::text(&self.door), utc, local]
    }

    pub(super) fn after(&self, ledger: &Ledger, yard: &Yard) -> Vec<Cell> {
        let entry = &self.entry;
        let [came, _] = times(yard, yard.stamp_ms(self.held.received_ms));
        let set = entry.set.and_then(|set| ledger.fleet().sets.get(&set)).and_then(|set| set.serial.clone());
        let aside = self.judged.is_aside().then(|| key(&self.judged));
        vec![
            Cell::known(entry.hours),
            person(ledger, entry.person),
            person(ledger, entry.trainer),
            Cell::yes(entry.pin_given),
            Cell::text(yard.phone(ledger, self.held.row.actor.key())),
            Cell::text(key(&entry.source)),
            Cell::yes(matches!(self.judged, Judged::Void | Judged::LeftOut)),
            Cell::some(aside),
            came,
            Cell::some(set),
            Cell::some(entry.note.clone()),
            Cell::text(entry.id.to_string()),
        ]
    }

    /// One row: the common columns around a kind's own.
    pub(super) fn row(&self, ledger: &Ledger, yard: &Yard, own: impl IntoIterator<Item = Cell>) -> Vec<Cell> {
        let mut row = self.before(yard);
        row.extend(own);
        row.extend(self.after(ledger, yard));
        row
    }
}

/// All heads of a kind.
pub(super) fn heads(own: &[&str]) -> Vec<String> {
    BEFORE.iter().chain(own).chain(&AFTER).map(|head| (*head).to_owned()).collect()
}

/// A moment in UTC and as the yard's clock showed it, both with their offset (RFC 3339).
pub(super) fn times(yard: &Yard, at: Stamp) -> [Cell; 2] {
    let utc = at.moment().to_utc().to_rfc3339_opts(SecondsFormat::Secs, true);
    let local = yard.stamp(at.moment()).moment().to_rfc3339_opts(SecondsFormat::Secs, false);
    [Cell::text(utc), Cell::text(local)]
}

/// As [`times`], of a moment that may not have been.
pub(super) fn times_or_blank(yard: &Yard, at: Option<Stamp>) -> [Cell; 2] {
    at.map_or_else(|| [Cell::blank(), Cell::blank()], |at| times(yard, at))
}

pub(super) fn person(ledger: &Ledger, person: Option<PersonId>) -> Cell {
    let named = |person| ledger.fleet().person_name(person).map_or_else(|| person.to_string(), str::to_owned);
    Cell::some(person.filter(|person| person.0 != uuid::Uuid::nil()).map(named))
}

/// The units a table is about, by door number.
pub(super) fn units(ledger: &Ledger, yard: &Yard, of: Of<'_>) -> Result<Vec<(String, TruckId)>, ShopError> {
    Ok(yard.units(ledger)?.into_iter().filter(|(_, truck)| of.holds(*truck)).collect())
}
