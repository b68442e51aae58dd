//! Makers' campaigns, one row for each unit they are about, may be, or were done on.

use sumpbook_daybook::ledger::Ledger;

use super::entries::{times, times_or_blank};
use super::{Cell, Of, Sheet};
use crate::ShopError;
use crate::due::due_list;
use crate::sheet::{Yard, key};

/// A campaign that is about no unit has one row with no unit in it, in a table of the whole fleet.
pub(super) fn campaigns(ledger: &Ledger, yard: &Yard, of: Of<'_>) -> Result<Sheet, ShopError> {
    let own = [
        "Unit",
        "Campaign",
        "Maker's paper",
        "Read at",
        "Words",
        "Of",
        "Serial",
        "State",
        "Why",
        "Looked at",
        "Last good day",
        "Due at (h)",
        "Days left",
        "Hours left (h)",
        "Locks",
        "Locks at once",
        "Done on",
        "Done at (h)",
        "Late (days)",
        "Entered (UTC)",
        "Entered (yard)",
        "Said by",
        "Withdrawn (UTC)",
        "Withdrawn (yard)",
        "Withdrawn because",
        "Entry",
    ];
    let doors: Vec<String> =
        super::entries::units(ledger, yard, of)?.into_iter().map(|(door, _)| door).collect();
    let mut rows = Vec::new();
    for campaign in due_list(ledger, yard.now)?.campaigns {
        let here: Vec<_> =
            campaign.units.iter().filter(|unit| doors.contains(&unit.unit)).map(Some).collect();
        let whole = matches!(of, Of::Fleet) && here.is_empty();
        let gone = campaign.withdrawn.as_ref();
        for unit in if whole { vec![None] } else { here } {
            let mut row = vec![
                Cell::some(unit.map(|unit| unit.unit.clone())),
                Cell::text(&campaign.name),
                Cell::some(campaign.paper.clone()),
                Cell::some(campaign.read_at.clone()),
                Cell::text(&campaign.words),
                Cell::text(key(&campaign.of)),
                Cell::some(unit.and_then(|unit| unit.serial.clone())),
                Cell::some(unit.map(|unit| unit.state.clone())),
                Cell::some(unit.and_then(|unit| unit.look_why.clone())),
                Cell::some(unit.and_then(|unit| unit.looked.clone())),
                Cell::text(campaign.deadline.to_string()),
                Cell::known(campaign.hours),
                Cell::known(unit.and_then(|unit| unit.days_left)),
                Cell::known(unit.and_then(|unit| unit.hours_left.clone())),
                Cell::text(&campaign.locks),
                Cell::yes(campaign.stop),
                Cell::some(unit.and_then(|unit| unit.done_on).map(|day| day.to_string())),
                Cell::known(unit.and_then(|unit| unit.done_hours)),
                Cell::known(unit.and_then(|unit| unit.late_days)),
            ];
            row.extend(times(yard, campaign.entered));
            row.push(Cell::some(campaign.by.clone()));
            row.extend(times_or_blank(yard, gone.map(|gone| gone.at)));
            row.push(Cell::some(gone.map(|gone| gone.why.clone())));
            row.push(Cell::text(campaign.entry.to_string()));
            rows.push(row);
        }
    }
    Ok(Sheet { heads: own.iter().map(|head| (*head).to_owned()).collect(), rows })
}
