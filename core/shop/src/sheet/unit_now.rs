//! Units as they stand at the moment they are looked at: what the pages of units are made from.

use std::collections::BTreeMap;

use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::state::UnitState;
use sumpbook_trade::defect::DefectState;
use sumpbook_trade::{Stamp, TruckId};

use super::day_facts::DayFacts;
use super::found_rows::{DefectRow, LockedRow};
use super::record::{ExpectedRow, PhoneRow};
use super::rows::SettleRow;
use super::unit_day::UnitDay;
use super::{Yard, defects, expected, phones, readings};
use crate::ShopError;

/// One unit now.
pub(crate) struct UnitNow {
    /// Door number.
    pub(crate) door: String,
    /// Which.
    pub(crate) truck: TruckId,
    /// What its entries add up to; its defects as whoever looks now holds them, those too that are dated after this
    /// moment.
    pub(crate) state: UnitState,
    /// Its one line of the day.
    pub(crate) today: ExpectedRow,
    /// Lock-outs that stand.
    pub(crate) locked: Vec<LockedRow>,
    /// Readings that wait for a person.
    pub(crate) to_settle: Vec<SettleRow>,
    /// The phone that wrote of it last.
    pub(crate) phone: Option<PhoneRow>,
}

impl UnitNow {
    /// Defects that are not over.
    pub(crate) fn open_defects(&self) -> usize {
        self.state.defects.iter().filter(|d| !matches!(d.state, DefectState::Closed { .. })).count()
    }
}

/// Every unit, by door number.
///
/// # Errors
/// As any read.
pub(crate) fn units_now(ledger: &Ledger, yard: &Yard) -> Result<Vec<UnitNow>, ShopError> {
    read(ledger, yard, yard.units(ledger)?)
}

/// One unit.
///
/// # Errors
/// As any read.
pub(crate) fn unit_now(
    ledger: &Ledger,
    yard: &Yard,
    door: &str,
    truck: TruckId,
) -> Result<Option<UnitNow>, ShopError> {
    Ok(read(ledger, yard, vec![(door.to_owned(), truck)])?.into_iter().next())
}

fn read(ledger: &Ledger, yard: &Yard, doors: Vec<(String, TruckId)>) -> Result<Vec<UnitNow>, ShopError> {
    let units = UnitDay::read_these(ledger, yard, &DayFacts::read(ledger, yard)?, doors)?;
    let mut locked = by_unit(defects::locked(ledger, yard, &units)?, |row| &row.unit);
    let mut to_settle = by_unit(readings::to_settle(ledger, yard, &units)?, |row| &row.unit);
    let heard = phones::last_heard(ledger, yard)?;
    let read = units.into_iter().map(|unit| {
        let today = expected::expected_row(ledger, yard, &unit)?;
        let phone = unit.phone.map(|phone| PhoneRow {
            phone: yard.phone(ledger, phone),
            last_heard: heard.get(&phone.0).map(|ms| yard.stamp_ms(*ms)),
            added: None,
        });
        Ok(UnitNow {
            locked: locked.remove(&unit.door).unwrap_or_default(),
            to_settle: to_settle.remove(&unit.door).unwrap_or_default(),
            door: unit.door.clone(),
            truck: unit.truck,
            state: unit.into_state(yard),
            today,
            phone,
        })
    });
    read.collect()
}

fn by_unit<T>(rows: Vec<T>, unit: impl Fn(&T) -> &String) -> BTreeMap<String, Vec<T>> {
    let mut of: BTreeMap<String, Vec<T>> = BTreeMap::new();
    for row in rows {
        of.entry(unit(&row).clone()).or_default().push(row);
    }
    of
}

/// Defects of one unit that are not over, worst first.
///
/// # Errors
/// As any read.
pub(crate) fn open_defects(
    ledger: &Ledger,
    yard: &Yard,
    unit: &UnitNow,
) -> Result<Vec<DefectRow>, ShopError> {
    let of = std::iter::once((unit.door.as_str(), unit.state.defects.as_slice()));
    defects::of_units(ledger, yard, of, |defect| !matches!(defect.state, DefectState::Closed { .. }))
}

/// Every open defect of the fleet that waits for a certificate, worst first.
///
/// # Errors
/// As any read.
pub(crate) fn to_certify(ledger: &Ledger, yard: &Yard) -> Result<Vec<DefectRow>, ShopError> {
    let mut units = Vec::new();
    for (door, truck) in yard.units(ledger)? {
        let cut = if yard.is_under_way() { i64::MAX } else { yard.cut_ms };
        units.push((door, ledger.unit_state_at(truck, cut)?));
    }
    let of = units.iter().map(|(door, state)| (door.as_str(), state.defects.as_slice()));
    defects::of_units(ledger, yard, of, |defect| defect.state == DefectState::Open)
}

/// Whether the last news of a unit is older than a day, or there never was any.
pub(crate) fn is_old_news(yard: &Yard, heard: Option<Stamp>) -> bool {
    heard.is_none_or(|at| at.unix_ms() < super::unit_day::a_day_before(yard.cut_ms))
}
