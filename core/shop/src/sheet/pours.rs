//! What was poured on the day.

use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::Fact;
use sumpbook_trade::defect::Said;

use super::rows::TopUpRow;
use super::unit_day::{Told, UnitDay};
use super::{Yard, words};

pub(super) fn top_ups(ledger: &Ledger, yard: &Yard, units: &[UnitDay]) -> Vec<TopUpRow> {
    let mut rows = Vec::new();
    for unit in units {
        for told in &unit.told {
            if let Fact::TopUp(top_up) = &told.entry.fact {
                rows.push(TopUpRow {
                    unit: unit.door.clone(),
                    at: yard.stamp(told.entry.at.moment()),
                    fluid: words::key(&top_up.fluid),
                    grade: top_up.grade.clone(),
                    poured: words::poured(&top_up.pours),
                    before: top_up.before.map(words::glass),
                    after: top_up.after.map(words::glass),
                    who: yard.name(ledger, told.entry.person),
                    finding: finding(unit, told),
                });
            }
        }
    }
    rows
}

/// What the pour itself tells: its entry is a finding of some defect.
fn finding(unit: &UnitDay, told: &Told) -> Option<String> {
    let answers = unit.state.defects.iter().flat_map(|defect| &defect.answers);
    answers.filter(|answer| answer.entry == told.entry.id.0).find_map(|answer| match &answer.said {
        Said::Defect { words, .. } => Some(words.clone()),
        Said::Ok => None,
    })
}
