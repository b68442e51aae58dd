//! When the set was laid up, and what of the list before its return was answered.

use chrono::{DateTime, FixedOffset};
use sumpbook_trade::Fact;
use sumpbook_trade::lay_up::{PutAway, ReturnList, Returning, Spell, spells};

use super::UnitState;
use super::inputs::Bearing;

/// Spells of the set, oldest first: the entries are those of the set, wherever it stood.
pub(super) fn of_set(entries: &[Bearing]) -> Vec<Spell> {
    // A list that does not read would free what it locks: without one nothing is told, and a test holds that it reads.
    let Ok(list) = ReturnList::common_practice() else { return Vec::new() };
    let (mut away, mut back) = (Vec::new(), Vec::new());
    for Bearing { entry, .. } in entries {
        let (at, id, person) = (entry.at.moment(), entry.id.0, entry.person.map(|person| person.0));
        match &entry.fact {
            Fact::LayUp(lay_up) => away.push(PutAway {
                at,
                entry: id,
                person,
                hours: entry.hours,
                done: lay_up.done.clone().or_else(|| entry.note.clone()),
            }),
            Fact::ReturnToService(said) => back.push(Returning {
                at,
                entry: id,
                person,
                lay_up: said.lay_up.map(|entry| entry.0),
                lines: said.lines.iter().map(|l| (l.line.clone(), l.how, l.reason.clone())).collect(),
            }),
            _ => {}
        }
    }
    spells(&away, &back, list)
}

impl UnitState {
    /// The lay-up in which the unit's set stands at a moment; none when it is not laid up.
    pub fn laid_up_at(&self, at: DateTime<FixedOffset>) -> Option<&Spell> {
        let stands = |spell: &&Spell| {
            spell.since <= at && spell.returned.as_ref().is_none_or(|returned| at < returned.at)
        };
        self.lay_ups.iter().rev().find(stands)
    }
}
