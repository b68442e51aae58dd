//! One unit as the page and its JSON hold it.

use serde::{Deserialize, Serialize};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::state::UnitState;
use sumpbook_trade::{Stamp, TruckId};

use super::day_status::{self, DayStatusView};
use super::fluids::{self, Fluids};
use super::history::{self, History};
use super::hours::{self, Hours};
use super::lay_up;
use super::oil::{self, Oil};
use super::papers::{self, Paper};
use super::set::{self, Truck};
use super::set_told;
use super::tasks::{self, TaskView};
use crate::ShopError;
use crate::console::units::{self, UnitRow};
use crate::lay_up::LaidUp;
use crate::papers::DatedPaper;
use crate::sheet::{DefectRow, LockedRow, SetRow, SettleRow, Yard, open_defects, unit_now};
use crate::wait::WaitRow;

/// What is asked of the page: which page of what is long.
#[derive(Clone, Copy, Debug, Default, Deserialize)]
pub(super) struct Asked {
    pub(super) history: Option<usize>,
    pub(super) hours: Option<usize>,
}

/// One unit.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct UnitView {
    /// As known at.
    pub(super) known_at: Stamp,
    /// Its row among the units: road and air, today, hours, what runs out first.
    pub(super) now: UnitRow,
    /// Why it is locked.
    pub(super) locked: Vec<LockedRow>,
    /// Its tasks, first to run out first.
    pub(super) tasks: Vec<TaskView>,
    /// Defects that are not over, worst first.
    pub(super) defects: Vec<DefectRow>,
    /// Parts it waits for.
    pub(super) waits: Vec<WaitRow>,
    /// What it does from which day on.
    pub(super) day_status: DayStatusView,
    /// A reminder went from the display by then and no service is recorded.
    pub(super) reminder_gone_by: Option<Stamp>,
    /// Readings that wait for a person.
    pub(super) to_settle: Vec<SettleRow>,
    /// Readings of its meter.
    pub(super) hours: Hours,
    /// Where its oil goes.
    pub(super) oil: Oil,
    /// Entries, newest first.
    pub(super) history: History,
    /// What was poured.
    pub(super) fluids: Fluids,
    /// Papers that hold until a day.
    pub(super) dated_papers: Vec<DatedPaper>,
    /// Certificates, newest first.
    pub(super) papers: Vec<Paper>,
    /// The lay-up of its set, with the list before its return.
    pub(super) lay_up: LaidUp,
    /// What was recorded at the truck of its set, where the registration says something else.
    pub(super) set_told: Option<SetRow>,
    /// The truck and the set on it.
    pub(super) truck: Truck,
}

/// What every part of the page is read with.
pub(super) struct Reading<'a> {
    pub(super) ledger: &'a Ledger,
    pub(super) yard: &'a Yard,
    pub(super) truck: TruckId,
    pub(super) state: &'a UnitState,
}

/// None when there is no such unit.
pub(super) fn read(
    ledger: &Ledger,
    now: Stamp,
    door: &str,
    asked: &Asked,
) -> Result<Option<UnitView>, ShopError> {
    let yard = Yard::of(ledger, ledger.fleet().yard_day(now), now)?;
    let asked_door = door.trim();
    let found = yard.units(ledger)?.into_iter().find(|(door, _)| door.eq_ignore_ascii_case(asked_door));
    // A unit that is registered and not yet in service has a page too.
    let found = found
        .or_else(|| ledger.fleet().truck_by_door(asked_door).map(|truck| (truck.door.clone(), truck.truck)));
    let Some((door, truck)) = found else { return Ok(None) };
    let Some(unit) = unit_now(ledger, &yard, &door, truck)? else { return Ok(None) };
    let rows = units::rows(ledger, &yard, std::slice::from_ref(&unit))?;
    let Some(row) = rows.into_iter().next() else { return Ok(None) };
    let reading = Reading { ledger, yard: &yard, truck, state: &unit.state };
    let judged = ledger.hours_ledger(truck, yard.cut_ms)?;
    Ok(Some(UnitView {
        known_at: yard.stamp(now.moment()),
        now: row,
        tasks: tasks::read(&reading, &door)?,
        defects: open_defects(ledger, &yard, &unit)?,
        waits: unit.state.waiting.iter().map(|wait| WaitRow::of(&yard, &door, wait)).collect(),
        day_status: day_status::read(&reading, &door),
        reminder_gone_by: unit.state.cleared.as_ref().map(|cleared| yard.stamp(cleared.gone_by.at)),
        hours: hours::read(&reading, &judged, asked.hours.unwrap_or(1))?,
        oil: oil::read(&reading)?,
        history: history::read(&reading, &judged, asked.history.unwrap_or(1))?,
        fluids: fluids::read(&reading)?,
        dated_papers: papers::dated(&reading),
        papers: papers::read(&reading)?,
        lay_up: lay_up::read(&reading),
        set_told: set_told::read(&reading, &door),
        truck: set::read(&reading),
        locked: unit.locked,
        to_settle: unit.to_settle,
    }))
}
