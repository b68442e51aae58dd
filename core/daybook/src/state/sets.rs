//! What is recorded at a truck of the set on it, beside what the shop registered.

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use sumpbook_trade::{EntryId, Fact, PersonId, SetId, Tenths, TruckId};

use super::UnitState;
use super::inputs::Bearing;
use crate::fleet::Fleet;

/// A set was fitted to this truck, or taken off it, as somebody at the truck recorded it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SetToldNow {
    /// The entry.
    pub entry: EntryId,
    /// When.
    pub at: DateTime<FixedOffset>,
    /// By whom.
    pub person: Option<PersonId>,
    /// Which set.
    pub set: SetId,
    /// Fitted, and not taken off.
    pub fitted: bool,
    /// Its hours then, as they were read.
    pub hours: Option<Tenths>,
}

/// What was recorded at a truck is not what is registered. The registration rules until the shop says otherwise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetDisagrees {
    /// What was recorded.
    pub told: SetToldNow,
    /// The truck on which that set is registered; none for none.
    pub registered_on: Option<TruckId>,
    /// The set that is registered here; none for none.
    pub registered_here: Option<SetId>,
}

/// The newest of what was recorded at the truck: a set fitted or taken off later stands for what was before.
pub(super) fn last_told(entries: &[Bearing]) -> Option<SetToldNow> {
    entries.iter().rev().find_map(|Bearing { entry, .. }| {
        let (set, fitted, hours) = match &entry.fact {
            Fact::SetFitted(fitted) => (fitted.set, true, fitted.hours.or(entry.hours)),
            Fact::SetRemoved(removed) => (removed.set, false, entry.hours),
            _ => return None,
        };
        let at = entry.at.moment();
        Some(SetToldNow { entry: entry.id, at, person: entry.person, set, fitted, hours })
    })
}

impl UnitState {
    /// What was recorded of the set on this truck, where the registration never said the same from then on. A
    /// registration that came earlier or later than the work agrees with it all the same.
    pub fn set_disagrees(&self, fleet: &Fleet) -> Option<SetDisagrees> {
        let told = self.set_told.as_ref()?;
        let from = told.at.timestamp_millis();
        let then = fleet.set_at(self.truck, from) == Some(told.set);
        let rows = fleet.stood.get(&self.truck).map(Vec::as_slice).unwrap_or_default();
        let later = |is: bool| {
            rows.iter().filter(|(at, _)| *at > from).any(|(_, set)| (*set == Some(told.set)) == is)
        };
        let agrees = then == told.fitted || later(told.fitted);
        (!agrees).then(|| SetDisagrees {
            told: told.clone(),
            registered_on: fleet.sets.get(&told.set).and_then(|set| set.on),
            registered_here: fleet.set_on(self.truck).map(|set| set.set),
        })
    }
}
