//! What the last report says is not what is seen: the line of the walk on which each of its defects is told again.

use serde::{Deserialize, Serialize};
use sumpbook_trade::Stamp;
use sumpbook_trade::checklist::Template;

use super::last_report::is_open;
use super::walk::Walk;
use crate::draft::{PreTripDraft, place_of};
use crate::ledger::{Ledger, LedgerError};

/// A defect that is not over, and where the walk asks for it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ToldAgain {
    /// The item, for the text `item-...`.
    pub item: String,
    /// Its place.
    pub place: Option<String>,
    /// Label of the stop; none: this walk has no line like it.
    pub stop: Option<String>,
    /// The line's row id there.
    pub line: Option<String>,
}

/// Every defect of the unit that is not over, earliest first.
///
/// # Errors
/// As reading the store.
pub fn not_what_i_see(
    ledger: &Ledger,
    draft: &PreTripDraft,
    template: &Template,
    now: Stamp,
) -> Result<Vec<ToldAgain>, LedgerError> {
    let walk = Walk::of(ledger, template, draft, now)?;
    let state = ledger.unit_state(draft.unit)?;
    let lines = || walk.stops.iter().flat_map(|stop| stop.lines.iter().map(move |line| (stop, line)));
    let row = |item: &String, place: &Option<String>| {
        let found = lines().find(|(_, line)| {
            // A line without a place asks about all of them.
            let own = place_of(line);
            line.item == *item && (own.is_none() || own == *place)
        });
        ToldAgain {
            item: item.clone(),
            place: place.clone(),
            stop: found.map(|(stop, _)| stop.label()),
            line: found.map(|(_, line)| line.to_string()),
        }
    };
    Ok(state.defects.iter().filter(|d| is_open(d)).map(|d| row(&d.item, &d.place)).collect())
}
