//! A set that is laid up, as the unit's screen tells of it.

use serde::{Deserialize, Serialize};
use sumpbook_trade::lay_up::{LineStanding, Spell};
use sumpbook_trade::{EntryId, Stamp, Tenths};

use super::defect_row::name;
use super::news::count;
use crate::fleet::Fleet;
use crate::state::UnitState;

/// The lay-up in which the unit's set stands. Its clocks run on meanwhile.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LayUpRow {
    /// The first lay-up's entry: the row's id.
    pub id: EntryId,
    /// Since when.
    pub since: Stamp,
    /// Who put it away.
    pub by: Option<String>,
    /// Compressor hours then.
    pub hours: Option<Tenths>,
    /// What was done before, in the words of whoever did it.
    pub done: Vec<String>,
    /// Lines of the list before its return that nobody answered, for the texts `return-...`.
    pub open_lines: Vec<String>,
    /// How many lines the list has.
    pub lines: u32,
    /// Lines that somebody waived.
    pub waived: u32,
}

impl LayUpRow {
    /// The lay-up at a moment; none when it is not laid up. One whose phone's clock runs ahead stands all the same.
    pub(super) fn of(state: &UnitState, fleet: &Fleet, now: Stamp) -> Option<LayUpRow> {
        let ahead = || state.lay_ups.iter().rev().find(|spell| spell.returned.is_none());
        let spell: &Spell = state.laid_up_at(now.moment()).or_else(ahead)?;
        let open = spell.lines.iter().filter(|line| line.standing() == LineStanding::Open);
        let waived = spell.lines.iter().filter(|line| line.standing() == LineStanding::Waived);
        Some(LayUpRow {
            id: EntryId(spell.entry),
            since: spell.since.into(),
            by: spell.person.and_then(|person| name(fleet, person)),
            hours: spell.hours,
            done: spell.done.clone(),
            open_lines: open.map(|line| line.line.clone()).collect(),
            lines: count(spell.lines.len()),
            waived: count(waived.count()),
        })
    }
}
