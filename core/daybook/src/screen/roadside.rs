//! What an officer is shown of a unit, and nothing else.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::Template;
use sumpbook_trade::{Stamp, TruckId};

use super::defect_row::{DefectRow, name};
use super::eleven_parts::{LookedAt, PartRow, check_code, eleven_parts, looked_at};
use super::last_report::{ReportRow, is_open, last_of};
use super::news::{News, Standing};
use super::road_air::RoadAir;
use crate::ledger::{Ledger, LedgerError};

/// A signature under what was looked at.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SignedBy {
    /// Who; none when nobody here knows the name.
    pub by: Option<String>,
    /// When.
    pub at: Stamp,
    /// The person's own PIN was given.
    pub pin_given: bool,
    /// It was the short walk of whoever took the unit over.
    pub short: bool,
    /// With whom, while the person is learning.
    pub trainer: Option<String>,
    /// The trainer's own PIN was given.
    pub trainer_pin_given: bool,
}

/// The page.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RoadsideScreen {
    /// The fleet.
    pub fleet: String,
    /// The unit's door number.
    pub door: String,
    /// Its plate.
    pub plate: Option<String>,
    /// Serial number of the chassis.
    pub serial: Option<String>,
    /// Serial number of the compressor set on it.
    pub set_serial: Option<String>,
    /// As known at.
    pub known_at: Stamp,
    /// How old the shop's news is.
    pub news: News,
    /// Road and air.
    pub road_air: RoadAir,
    /// The eleven parts, in the rule's order.
    pub parts: Vec<PartRow>,
    /// Defects that are not over, earliest first.
    pub defects: Vec<DefectRow>,
    /// The last end-of-day report.
    pub report: Option<ReportRow>,
    /// The last day on which its annual inspection holds, when it is on record.
    pub annual_inspection: Option<NaiveDate>,
    /// It ran out by today.
    pub annual_inspection_over: bool,
    /// Who signed on the newest day on which somebody looked, the newest first.
    pub signed: Vec<SignedBy>,
    /// The code by which the shop, holding the same books, checks this page.
    pub check: String,
}

/// What an officer is shown of a unit.
///
/// # Errors
/// As reading the store.
pub fn roadside(
    ledger: &Ledger,
    unit: TruckId,
    template: &Template,
    standing: &Standing,
    now: Stamp,
) -> Result<RoadsideScreen, LedgerError> {
    let fleet = ledger.fleet();
    let truck = fleet.trucks.get(&unit);
    let state = ledger.unit_state(unit)?;
    let looked = looked_at(ledger, unit, i64::MAX)?;
    let annual_inspection = truck.and_then(|truck| truck.annual_inspection);
    let signed = |of: &LookedAt| SignedBy {
        by: of.entry.person.and_then(|person| name(fleet, person.0)),
        at: of.entry.at,
        pin_given: of.entry.pin_given,
        short: of.section.follows.is_some(),
        trainer: of.entry.trainer.and_then(|person| name(fleet, person.0)),
        trainer_pin_given: of.entry.trainer_pin_given,
    };
    Ok(RoadsideScreen {
        fleet: fleet.name.clone(),
        door: fleet.door(unit),
        plate: truck.and_then(|truck| truck.plate.clone()),
        serial: truck.and_then(|truck| truck.serial.clone()),
        set_serial: fleet.set_on(unit).and_then(|set| set.serial.clone()),
        known_at: now,
        news: News::at(standing.heard, now),
        road_air: RoadAir::of(fleet, unit, &state, now),
        parts: eleven_parts(ledger, unit, template, &looked),
        defects: state.defects.iter().filter(|d| is_open(d)).map(|d| DefectRow::of(d, fleet)).collect(),
        report: last_of(ledger, unit)?,
        annual_inspection,
        annual_inspection_over: annual_inspection.is_some_and(|day| day < fleet.yard_day(now)),
        signed: looked.iter().map(signed).collect(),
        check: check_code(ledger, unit, now)?,
    })
}
