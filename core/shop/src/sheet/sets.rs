//! What was recorded at a truck of the set on it, where the registration says something else.

use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::state::UnitState;

use super::Yard;
use super::rows::SetRow;
use super::unit_day::UnitDay;

/// Of every unit, by door number.
pub(super) fn disagreeing(ledger: &Ledger, yard: &Yard, units: &[UnitDay]) -> Vec<SetRow> {
    units.iter().filter_map(|unit| row(ledger, yard, &unit.door, &unit.state)).collect()
}

/// Of one unit; none where record and registration agree, or nothing is recorded.
pub(crate) fn row(ledger: &Ledger, yard: &Yard, door: &str, state: &UnitState) -> Option<SetRow> {
    let fleet = ledger.fleet();
    let found = state.set_disagrees(fleet)?;
    let named = |set| {
        let serial = fleet.sets.get(&set).and_then(|set| set.serial.clone());
        serial.unwrap_or_else(|| set.to_string())
    };
    Some(SetRow {
        unit: door.to_owned(),
        entry: found.told.entry,
        at: yard.stamp(found.told.at),
        who: yard.name(ledger, found.told.person),
        what: if found.told.fitted { "fitted" } else { "removed" }.to_owned(),
        set: named(found.told.set),
        hours: found.told.hours,
        registered_on: found.registered_on.map(|truck| fleet.door(truck)),
        registered_here: found.registered_here.map(named),
    })
}
