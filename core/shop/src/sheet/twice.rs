//! Services that look entered twice (R7).

use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::state::UnitState;
use sumpbook_trade::{Entry, EntryId};

use super::Yard;
use super::rows::{ToldService, TwiceRow};
use super::unit_day::UnitDay;
use crate::ShopError;

pub(super) fn entered_twice(
    ledger: &Ledger,
    yard: &Yard,
    units: &[UnitDay],
) -> Result<Vec<TwiceRow>, ShopError> {
    doubles(ledger, yard, units.iter().map(|unit| (unit.door.as_str(), &unit.state)))
}

/// The same of these units.
pub(crate) fn doubles<'a>(
    ledger: &Ledger,
    yard: &Yard,
    units: impl Iterator<Item = (&'a str, &'a UnitState)>,
) -> Result<Vec<TwiceRow>, ShopError> {
    let mut rows = Vec::new();
    for (door, state) in units {
        // A first service and the task it opens tell of the same entries: once is enough.
        for clock in state.clocks.iter().filter(|clock| clock.first_of.is_none()) {
            for twice in clock.entered_twice.iter().filter(|twice| !twice.settled) {
                let (first, second) = (told(ledger, yard, twice.first)?, told(ledger, yard, twice.second)?);
                if let (Some(first), Some(second), Some(last)) = (first, second, clock.last) {
                    rows.push(TwiceRow {
                        unit: door.to_owned(),
                        task: clock.task.to_string(),
                        first,
                        second,
                        hours: last.hours,
                        day: last.day,
                    });
                }
            }
        }
    }
    Ok(rows)
}

fn told(ledger: &Ledger, yard: &Yard, entry: uuid::Uuid) -> Result<Option<ToldService>, ShopError> {
    let held = ledger.store().truth().by_id(EntryId(entry))?.into_iter().next();
    let entry = held.and_then(|held| Entry::from_payload(&held.row.payload).ok());
    Ok(entry.map(|entry| ToldService {
        entry: entry.id,
        at: yard.stamp(entry.at.moment()),
        hours: entry.hours,
        who: yard.name(ledger, entry.person),
    }))
}
