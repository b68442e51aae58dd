//! What a unit is down as, from which day on.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::record::DayStatusSet;

use super::inputs::Bearing;

/// From this day on the unit does this.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct RosterChange {
    /// From this day of the yard.
    pub from: NaiveDate,
    /// What it does.
    pub status: DayStatus,
    /// Expected out from this minute of the day.
    pub expected_minute: Option<u16>,
}

/// Changes in the order of their days; of two for one day the later entry stands.
pub(super) fn roster(entries: &[Bearing]) -> Vec<RosterChange> {
    let mut changes: Vec<RosterChange> = Vec::new();
    let said = entries.iter().filter_map(|bearing| match &bearing.entry.fact {
        sumpbook_trade::Fact::DayStatusSet(set) => Some(set),
        _ => None,
    });
    for DayStatusSet { from, status, expected_minute } in said {
        changes.retain(|change| change.from != *from);
        changes.push(RosterChange { from: *from, status: *status, expected_minute: *expected_minute });
    }
    changes.sort_by_key(|change| change.from);
    changes
}
