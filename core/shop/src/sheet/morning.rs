//! The morning's sections: who may go out.

use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::clock::Standing;
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::{Fact, FactKind};

use super::aside::came_late;
use super::record::{Morning, Section, VisitRow, Yesterday};
use super::unit_day::{UnitDay, entry_of};
use super::{Read, Yard, defects, expected, phones};
use crate::ShopError;
use crate::due;
use crate::plan::PlannedDefect;

/// Plans of one unit looked through: more are never open at once.
const PLANS: i64 = 20;

pub(super) fn morning(ledger: &Ledger, yard: &Yard, read: &Read) -> Result<Morning, ShopError> {
    let units = &read.units;
    let out = units.iter().filter(|unit| unit.status == Some(DayStatus::Out));
    let day = yard.yesterday()?;
    let closed = read.closings.iter().filter(|(_, closed)| closed.day == day);
    Ok(Morning {
        not_to_go_out: Section::of(defects::locked(ledger, yard, units)?),
        to_certify: Section::of(defects::to_certify(ledger, yard, units)?),
        expected: Section::of(out.map(|unit| expected::expected_row(ledger, yard, unit)).collect()),
        due: due::list(ledger, yard, &read.states(), Standing::DueToday)?,
        in_the_bays: Section::of(visits(ledger, yard, units)?),
        phones_quiet: Section::of(phones::quiet(ledger, yard, &read.heard)),
        version_two: Yesterday {
            day,
            closed: closed.map(|(_, closed)| closed.version).max(),
            came_late: Section::of(came_late(ledger, yard, &read.closings, day, &read.facts)?),
        },
    })
}

fn visits(ledger: &Ledger, yard: &Yard, units: &[UnitDay]) -> Result<Vec<VisitRow>, ShopError> {
    let truth = ledger.store().truth();
    let code = FactKind::VisitPlan.code().unwrap_or(0);
    let mut rows = Vec::new();
    for unit in units {
        let mut plans = truth.newest_facts(unit.truck, code, PLANS)?;
        plans.retain(|fact| fact.at_ms <= yard.cut_ms && !fact.judged.is_aside());
        plans.reverse();
        for fact in plans {
            if let Some((_, entry)) = entry_of(&truth, fact.n)?
                && let Fact::VisitPlan(plan) = entry.fact
                && fact.judged == sumpbook_daybook::judgement::Judged::Counts
                && plan.day == yard.day
            {
                rows.push(VisitRow {
                    unit: unit.door.clone(),
                    tasks: plan.tasks.iter().map(ToString::to_string).collect(),
                    defects: plan.defects.iter().map(PlannedDefect::of).collect(),
                    where_and_who: plan.where_and_who,
                });
            }
        }
    }
    Ok(rows)
}
