//! The morning's sections: who may go out.

use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::clock::Standing;
use sumpbook_trade::day::DayStatus;

use super::aside::{came_late, dated_ahead};
use super::record::{Morning, Section, Yesterday};
use super::{Read, Yard, defects, expected, phones, visits};
use crate::ShopError;
use crate::due;

pub(super) fn morning(ledger: &Ledger, yard: &Yard, read: &Read) -> Result<Morning, ShopError> {
    let units = &read.units;
    let out = units.iter().filter(|unit| unit.status == Some(DayStatus::Out));
    let day = yard.yesterday()?;
    let closed = read.closings.iter().filter(|(_, closed)| closed.day == day);
    Ok(Morning {
        not_to_go_out: Section::of(defects::locked(ledger, yard, units)?),
        to_certify: Section::of(defects::to_certify(ledger, yard, units)?),
        expected: Section::of(
            out.map(|unit| expected::expected_row(ledger, yard, unit)).collect::<Result<_, _>>()?,
        ),
        due: due::list(ledger, yard, &read.states(), Standing::DueToday)?,
        parts_in: Section::of(visits::parts_in(ledger, yard, units)?),
        in_the_bays: Section::of(visits::planned_for(ledger, units, yard.day)?),
        phones_quiet: Section::of(phones::quiet(ledger, yard, &read.heard)),
        version_two: Yesterday {
            day,
            closed: closed.map(|(_, closed)| closed.version).max(),
            came_late: Section::of(came_late(ledger, yard, &read.closings, day, &read.facts)?),
        },
        dated_ahead: Section::of(dated_ahead(ledger, yard, &read.facts)?),
    })
}
