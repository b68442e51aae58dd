//! From an entry to its line: ids become door numbers and names.

use sumpbook_trade::{Entry, PersonId};

use super::Line;
use crate::fleet::Fleet;

impl Line {
    /// The line that says this entry. What the fleet does not know stands as its id.
    pub fn of(entry: &Entry, fleet: &Fleet) -> Line {
        let named = |name: &str| fleet.people.values().filter(|p| p.name.eq_ignore_ascii_case(name)).count();
        // A name that two people share would not find its way back.
        let name = |person: PersonId| {
            let own = fleet.person_name(person).filter(|name| named(name) == 1);
            own.map_or_else(|| person.to_string(), str::to_owned)
        };
        Line {
            unit: entry.unit.map(|truck| fleet.door(truck)),
            person: entry.person.map(name),
            with: entry.trainer.map(name),
            at: Some(entry.at),
            hours: entry.hours,
            note: entry.note.clone(),
            source: Some(entry.source),
            pin_given: entry.pin_given,
            trainer_pin_given: entry.trainer_pin_given,
            id: Some(entry.id),
            fact: entry.fact.clone(),
        }
    }
}
