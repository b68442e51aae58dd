//! Planning the shop's week: what is near its end over the whole fleet, which visits are planned, and what
//! must be ordered by when.
//!
//! One pass over the folded states, whatever the size of the fleet: the store is asked only for what the units need
//! that come in within the week.

use std::collections::BTreeMap;

use chrono::{Days, NaiveDate};
use serde::{Deserialize, Serialize};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::state::{UnitState, WaitingNow};
use sumpbook_trade::clock::{Standing, TaskId};
use sumpbook_trade::record::{DefectName, VisitPlan};
use sumpbook_trade::{EntryId, Stamp, TruckId};

use crate::campaign::{self, CampaignRow};
use crate::certify::open_defect;
use crate::due::{self, DueRow, PartRow};
use crate::papers::DatedPaper;
use crate::parts::{self, OilToLoad, VisitNeeds};
use crate::sheet::Yard;
use crate::wait::WaitRow;
use crate::{Hand, Shop, ShopError, service};

/// A row is near within so many days of its last good day. Common practice, no source.
const NEAR_DAYS: i64 = 30;
/// Or within so many hours.
const NEAR_HOURS: f64 = 50.0;
/// Days of the week that is planned, today included.
const WEEK_DAYS: u64 = 7;

/// The fleet as whoever plans the week sees it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct FleetDue {
    /// Today in the yard.
    pub today: NaiveDate,
    /// Units looked at.
    pub units: usize,
    /// Tasks past due, due, coming up, or within 30 days or 50 hours, and every campaign that is to be done, in the
    /// list's order.
    pub rows: Vec<PlanRow>,
    /// The same of sets that are laid up: their clocks run on, they are looked at before the return.
    pub laid_up: Vec<PlanRow>,
    /// What to order, soonest first; for a set that is laid up nothing.
    pub orders: Vec<OrderRow>,
    /// Visits of the next seven days, and earlier ones that were not done, by day and unit.
    pub visits: Vec<VisitRow>,
    /// Visits planned for later.
    pub later: Vec<VisitRow>,
    /// Parts waited for that belong to no task.
    pub parts: Vec<PartRow>,
    /// Every open wait for a part, of tasks near and far too, by unit.
    pub waits: Vec<WaitRow>,
    /// What the visits of the next seven days need, in their order.
    pub needs: Vec<VisitNeeds>,
    /// Oil for all of them.
    pub oil: Vec<OilToLoad>,
    /// Papers that ran out or do within 30 days, soonest first.
    pub papers: Vec<DatedPaper>,
    /// Every maker's campaign with its units.
    pub campaigns: Vec<CampaignRow>,
}

/// A task that is near its end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct PlanRow {
    /// How it stands.
    #[serde(flatten)]
    pub due: DueRow,
    /// Days its parts take to come; 0 when they are on the shelf.
    pub lead_days: u32,
    /// The visit it is planned in.
    pub visit: Option<VisitRow>,
}

/// A planned visit of one unit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct VisitRow {
    /// The entry that plans it.
    pub entry: EntryId,
    /// Door number.
    pub unit: String,
    /// For this day.
    pub day: NaiveDate,
    /// Its tasks that are still to be done: keys of the texts.
    pub tasks: Vec<String>,
    /// Its defects that are still to be certified.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub defects: Vec<PlannedDefect>,
    /// In which bay, by whom.
    pub where_and_who: Option<String>,
    /// Its day is over and its tasks are not done.
    pub missed: bool,
}

/// A defect to be repaired in a visit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct PlannedDefect {
    /// The checklist's item: a key of the texts.
    pub item: String,
    /// Which of several.
    pub place: Option<String>,
}

/// What one unit comes in for.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Work {
    /// Tasks of its programme.
    pub tasks: Vec<TaskId>,
    /// Defects, each named by its item, or `item/place`.
    pub defects: Vec<String>,
}

/// Parts to order for one task.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct OrderRow {
    /// The task: a key of the texts.
    pub task: String,
    /// For these units.
    pub units: Vec<String>,
    /// Days until they come.
    pub lead_days: u32,
    /// To be ordered by this day at the latest, or that day is past; none when only hours count and the pace
    /// is not known.
    pub by: Option<NaiveDate>,
}

/// What is near its end over the whole fleet, with its visits and what to order, as known at `now`.
///
/// # Errors
/// As any read.
pub fn fleet_due(ledger: &Ledger, now: Stamp) -> Result<FleetDue, ShopError> {
    fleet_due_with(ledger, now, None)
}

/// The same, with every task of one unit, near or far.
///
/// # Errors
/// As any read.
pub(crate) fn fleet_due_with(ledger: &Ledger, now: Stamp, unit: Option<&str>) -> Result<FleetDue, ShopError> {
    let yard = Yard::of(ledger, ledger.fleet().yard_day(now), now)?;
    let states = states(ledger, &yard)?;
    let of: Vec<(&str, &UnitState)> = states.iter().map(|(door, state)| (door.as_str(), state)).collect();
    let list = due::list(ledger, &yard, &of, Standing::FarOff)?;
    let week_ends = yard.day.checked_add_days(Days::new(WEEK_DAYS)).unwrap_or(NaiveDate::MAX);
    let (mut visits, mut later) = (Vec::new(), Vec::new());
    let mut planned: BTreeMap<(&str, String), VisitRow> = BTreeMap::new();
    for (door, state) in &states {
        for visit in visits_of(&yard, door, state) {
            for task in &visit.tasks {
                planned.insert((door, task.clone()), visit.clone());
            }
            if visit.day < week_ends { visits.push(visit) } else { later.push(visit) }
        }
    }
    let by_day = |a: &VisitRow, b: &VisitRow| (a.day, &a.unit).cmp(&(b.day, &b.unit));
    visits.sort_by(by_day);
    later.sort_by(by_day);
    let leads = leads(&states);
    let plan_row = |due: DueRow| PlanRow {
        lead_days: leads.get(&(due.unit.as_str(), due.task.as_str())).copied().unwrap_or(0),
        visit: planned.get(&(due.unit.as_str(), due.task.clone())).cloned(),
        due,
    };
    let near = |rows: Vec<DueRow>| -> Vec<PlanRow> {
        let near = rows.into_iter().filter(|row| is_near(row) || unit == Some(row.unit.as_str()));
        near.map(plan_row).collect()
    };
    let (rows, laid_up) = (near(list.rows), near(list.laid_up));
    let orders = orders(&rows);
    let campaigns = campaign::campaigns(ledger, &yard, &of);
    let needs = needs(ledger, &yard, &states, &visits)?;
    Ok(FleetDue {
        today: yard.day,
        units: states.len(),
        rows,
        laid_up,
        orders,
        visits,
        later,
        parts: list.parts,
        waits: states
            .iter()
            .flat_map(|(door, state)| state.waiting.iter().map(|wait| WaitRow::of(&yard, door, wait)))
            .collect(),
        oil: parts::to_load(&needs),
        needs,
        papers: list.papers,
        campaigns,
    })
}

/// What visits need, with what their units wait for.
fn needs(
    ledger: &Ledger,
    yard: &Yard,
    states: &[(String, UnitState)],
    visits: &[VisitRow],
) -> Result<Vec<VisitNeeds>, ShopError> {
    let mut needs = Vec::with_capacity(visits.len());
    for visit in visits {
        let Some((door, state)) = states.iter().find(|(door, _)| *door == visit.unit) else { continue };
        let of_visit =
            |wait: &&WaitingNow| wait.what.task.as_ref().is_none_or(|task| visit.tasks.contains(&task.0));
        let waits = state.waiting.iter().filter(of_visit).map(|wait| PartRow::of(yard, door, wait));
        needs.push(parts::of_visit(ledger, state.truck, visit, waits.collect())?);
    }
    Ok(needs)
}

/// The states of all units as they stand at the cut, by door number.
pub(crate) fn states(ledger: &Ledger, yard: &Yard) -> Result<Vec<(String, UnitState)>, ShopError> {
    let fleet = ledger.fleet();
    let mut states = Vec::new();
    for state in ledger.all_unit_states()? {
        // A unit that came later is not of this day.
        if fleet.trucks.get(&state.truck).is_some_and(|truck| truck.in_service > yard.day) {
            continue;
        }
        let truck = state.truck;
        let state =
            if state.newest_ms <= yard.cut_ms { state } else { ledger.unit_state_at(truck, yard.cut_ms)? };
        states.push((fleet.door(truck), state));
    }
    states.sort_by(|a, b| a.0.cmp(&b.0));
    Ok(states)
}

/// Whether somebody must think of it within a month. A maker's campaign is thought of until it is done.
pub fn is_near(row: &DueRow) -> bool {
    let hours = row.hours_left.as_deref().and_then(|left| left.parse::<f64>().ok());
    row.state != "far-off"
        || row.campaign.is_some()
        || row.days_left.is_some_and(|left| left <= NEAR_DAYS)
        || hours.is_some_and(|left| left <= NEAR_HOURS)
}

fn visits_of(yard: &Yard, door: &str, state: &UnitState) -> Vec<VisitRow> {
    let row = |visit: &sumpbook_daybook::state::PlannedNow| VisitRow {
        entry: visit.entry,
        unit: door.to_owned(),
        day: visit.day,
        tasks: visit.tasks.iter().map(TaskId::to_string).collect(),
        defects: visit.defects.iter().map(PlannedDefect::of).collect(),
        where_and_who: visit.where_and_who.clone(),
        missed: visit.day < yard.day,
    };
    state.planned.iter().map(row).collect()
}

fn leads(states: &[(String, UnitState)]) -> BTreeMap<(&str, &str), u32> {
    let with_parts = |state: &'_ UnitState| state.clocks.iter().any(|clock| clock.lead_days > 0);
    let mut leads = BTreeMap::new();
    for (door, state) in states.iter().filter(|(_, state)| with_parts(state)) {
        leads.extend(state.clocks.iter().map(|c| ((door.as_str(), c.task.0.as_str()), c.lead_days)));
    }
    leads
}

/// Parts that take time to come and are not ordered yet, one row a task and lead time.
fn orders(rows: &[PlanRow]) -> Vec<OrderRow> {
    let mut orders: BTreeMap<(&str, u32), OrderRow> = BTreeMap::new();
    let near = rows.iter().filter(|row| is_near(&row.due));
    for row in near.filter(|row| row.lead_days > 0 && row.due.waiting_for.is_none()) {
        let lead = Days::new(u64::from(row.lead_days));
        // The parts must be there by the first day on which either clock may run out (R2).
        let earliest = row.due.forecast.map(|forecast| forecast.earliest);
        let ends = [row.due.last_good_day, earliest].into_iter().flatten().min();
        let by = ends.and_then(|day| day.checked_sub_days(lead));
        let order = orders.entry((&row.due.task, row.lead_days)).or_insert_with(|| OrderRow {
            task: row.due.task.clone(),
            units: Vec::new(),
            lead_days: row.lead_days,
            by: None,
        });
        order.units.push(row.due.unit.clone());
        order.by = [order.by, by].into_iter().flatten().min();
    }
    let mut orders: Vec<OrderRow> = orders.into_values().collect();
    orders.sort_by(|a, b| (a.by.is_none(), a.by, &a.task).cmp(&(b.by.is_none(), b.by, &b.task)));
    orders
}

impl PlannedDefect {
    /// As a visit names it.
    pub(crate) fn of(name: &DefectName) -> PlannedDefect {
        PlannedDefect { item: name.item.clone(), place: name.place.clone() }
    }
}

/// Plans a visit of each of these units for a day: what was planned before moves to it, and with nothing said of bay
/// and person keeps its own.
///
/// # Errors
/// When nobody is named, nothing is to be done, a task is not in its unit's programme, or a defect is not open;
/// then nothing is recorded.
pub fn plan_visits(
    shop: &mut Shop,
    visits: &[(TruckId, Work)],
    day: NaiveDate,
    where_and_who: Option<String>,
    hand: &Hand,
) -> Result<(), ShopError> {
    if hand.person.is_none() {
        return Err(ShopError::NoPerson);
    }
    // All are looked at before any is written.
    let mut plans = Vec::with_capacity(visits.len());
    for (truck, work) in visits {
        if work.defects.is_empty() || !work.tasks.is_empty() {
            service::known_tasks(shop, *truck, &work.tasks)?;
        }
        let defects = work
            .defects
            .iter()
            .map(|named| open_defect(shop, *truck, named))
            .collect::<Result<Vec<_>, _>>()?;
        let tasks = work.tasks.clone();
        let where_and_who = match &where_and_who {
            Some(said) => Some(said.clone()),
            None => where_it_stood(&shop.ledger.unit_state(*truck)?, &tasks, &defects),
        };
        plans.push((*truck, VisitPlan { tasks, day, where_and_who, defects }));
    }
    for (truck, plan) in plans {
        shop.write(Some(truck), plan.into(), None, hand)?;
    }
    Ok(())
}

/// In which bay and by whom any of this work was planned so far.
fn where_it_stood(state: &UnitState, tasks: &[TaskId], defects: &[DefectName]) -> Option<String> {
    let moves = state.planned.iter().filter(|visit| {
        visit.tasks.iter().any(|task| tasks.contains(task))
            || visit.defects.iter().any(|defect| defects.iter().any(|new| defect.is_same_place(new)))
    });
    moves.filter_map(|visit| visit.where_and_who.clone()).next()
}
