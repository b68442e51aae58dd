//! Rows that register units.

use chrono::NaiveDate;
use sumpbook_trade::oil::Millilitres;
use sumpbook_trade::record::{SetProfile, SetRegistered};
use sumpbook_trade::{Feature, Features, Figure, Tenths};

use super::cells::Cells;
use super::rows::family;
use super::{Column, Why};
use sumpbook_daybook::fleet::Fleet;

/// A unit as a row says it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct UnitRow {
    pub(super) door: String,
    pub(super) serial: Option<String>,
    pub(super) plate: Option<String>,
    pub(super) set_serial: Option<String>,
    pub(super) in_service: NaiveDate,
    pub(super) in_service_hours: Tenths,
    pub(super) features: Option<Features>,
    pub(super) profile: SetProfile,
}

/// The unit of a row; none when something in it is refused, which `cells` then tells.
pub(super) fn read(cells: &mut Cells<'_>) -> Option<UnitRow> {
    let own = |text: Option<&str>| text.map(str::to_owned);
    let door = own(cells.needed(Column::Unit));
    let in_service = cells.day(Column::InService);
    cells.needed(Column::InServiceHours);
    let in_service_hours = cells.hours(Column::InServiceHours);
    let features = features(cells);
    let profile = SetProfile {
        glass: cells.volume(Column::GlassVolume),
        oil_family: family(cells),
        oil_grade: own(cells.text(Column::OilGrade)),
        oil_volume: cells.volume(Column::OilVolume),
        ..SetProfile::unknown()
    };
    if !cells.refused.is_empty() {
        return None;
    }
    Some(UnitRow {
        door: door?,
        serial: own(cells.text(Column::Serial)),
        plate: own(cells.text(Column::Plate)),
        set_serial: own(cells.text(Column::SetSerial)),
        in_service: in_service?.0,
        in_service_hours: in_service_hours?,
        features,
        profile,
    })
}

fn features(cells: &mut Cells<'_>) -> Option<Features> {
    let said = cells.text(Column::Features)?;
    let mut switched = Vec::new();
    for one in said.split([';', ',', '\n']).map(str::trim).filter(|one| !one.is_empty()) {
        let name = one.to_lowercase().replace([' ', '_'], "-");
        match serde_json::from_value::<Feature>(serde_json::Value::String(name)) {
            Ok(feature) => switched.push(feature),
            Err(_) => {
                cells.refuse(Column::Features, Why::UnknownFeature);
                return None;
            }
        }
    }
    Some(Features::of(switched))
}

/// The unit of this door number as the fleet has it.
pub(super) enum There {
    /// None of that number.
    No,
    /// Registered as the row says, as far as the row says anything.
    Same,
    /// Registered otherwise in this column.
    Otherwise(Column),
}

/// How a row stands to what is registered. A blank cell says nothing against it.
pub(super) fn there(fleet: &Fleet, row: &UnitRow) -> There {
    let volume =
        |given: Option<Figure>, is: fn(&SetProfile) -> Option<Figure>, set: Option<&SetRegistered>| {
            // The same amount in another unit is the same.
            let ml = |figure: Option<Figure>| figure.and_then(Millilitres::of);
            let is = ml(set.and_then(|set| is(&set.profile)));
            ml(given).is_some_and(|given| is.is_none_or(|is| (given.0 - is.0).abs() > 0.5))
        };
    let differs = |given: &Option<String>, is: Option<&String>| given.is_some() && given.as_ref() != is;
    let Some(truck) = fleet.truck_by_door(&row.door) else { return There::No };
    let set = fleet.set_on(truck.truck);
    let columns = [
        (Column::Serial, differs(&row.serial, truck.serial.as_ref())),
        (Column::Plate, differs(&row.plate, truck.plate.as_ref())),
        (Column::InService, row.in_service != truck.in_service),
        (Column::InServiceHours, row.in_service_hours != truck.in_service_hours),
        (Column::Features, row.features.as_ref().is_some_and(|has| has.switched != truck.features.switched)),
        (Column::SetSerial, differs(&row.set_serial, set.and_then(|set| set.serial.as_ref()))),
        (Column::GlassVolume, volume(row.profile.glass, |profile| profile.glass, set)),
        (Column::OilVolume, volume(row.profile.oil_volume, |profile| profile.oil_volume, set)),
        (
            Column::OilGrade,
            differs(&row.profile.oil_grade, set.and_then(|set| set.profile.oil_grade.as_ref())),
        ),
        (
            Column::OilFamily,
            row.profile.oil_family.is_some()
                && row.profile.oil_family != set.and_then(|set| set.profile.oil_family),
        ),
    ];
    match columns.into_iter().find(|(_, differs)| *differs) {
        Some((column, _)) => There::Otherwise(column),
        None => There::Same,
    }
}
