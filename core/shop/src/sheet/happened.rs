//! What happened on the day: somebody hurt, something spilt or hit.

use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::Fact;

use super::rows::HappenedRow;
use super::unit_day::UnitDay;
use super::{Yard, words};

pub(super) fn rows(ledger: &Ledger, yard: &Yard, units: &[UnitDay]) -> Vec<HappenedRow> {
    let mut rows = Vec::new();
    for unit in units {
        for told in &unit.told {
            let Fact::Happened(happened) = &told.entry.fact else { continue };
            rows.push(HappenedRow {
                unit: unit.door.clone(),
                what: happened.what.as_ref().map(words::key),
                when: yard.stamp(happened.when.unwrap_or(told.entry.at).moment()),
                place: happened.place.clone(),
                how_much: happened.how_much.clone(),
                told: happened.told.clone(),
                words: told.entry.note.clone(),
                photos: happened.photos.len(),
                who: yard.name(ledger, told.entry.person),
            });
        }
    }
    rows.sort_by(|a, b| (a.when, &a.unit).cmp(&(b.when, &b.unit)));
    rows
}
