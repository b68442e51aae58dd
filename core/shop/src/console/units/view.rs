//! Every unit as the page and its JSON hold it: those that need someone, then the rest.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::campaign::{CampaignStands, stands};
use sumpbook_trade::clock::Standing;
use sumpbook_trade::{Stamp, Tenths};

use crate::ShopError;
use crate::console::mark::{LockNow, Pair};
use crate::due::{self, DueRow};
use crate::oil_use::OilUse;
use crate::sheet::{ExpectedRow, LockedRow, UnitNow, Yard, is_old_news, units_now};

/// As many rows stand on one page of the table.
pub(super) const PAGE: usize = 200;

/// What a table is sorted by.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum Sort {
    /// The door number.
    #[default]
    Unit,
    /// Locked first.
    RoadAir,
    /// Not reported first.
    Today,
    /// Farthest over its usual oil use first.
    Oil,
    /// Most hours first.
    Hours,
    /// What presses most first, then the sooner day.
    First,
    /// Longest not heard from first.
    Heard,
    /// Most that is open first.
    Open,
}

/// What is asked of the page.
#[derive(Clone, Debug, Default, Deserialize)]
pub(super) struct Asked {
    /// Part of a door number.
    pub(super) find: Option<String>,
    #[serde(default)]
    pub(super) sort: Sort,
    /// Everything as one table.
    #[serde(default)]
    pub(super) table: bool,
    pub(super) page: Option<usize>,
}

/// The page.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(in crate::console) struct UnitsView {
    /// As known at.
    pub(super) known_at: Stamp,
    /// How many units there are.
    pub(super) count: usize,
    /// Part of a door number that was looked for.
    pub(super) find: Option<String>,
    /// What the rows are sorted by.
    pub(super) sort: Sort,
    /// Everything stands in `rows`, a page at a time; otherwise only what needs someone.
    pub(super) table: bool,
    /// The page of the table, from 1.
    pub(super) page: usize,
    /// Each page's first and last door number.
    pub(super) pages: Vec<(String, String)>,
    /// How many need someone.
    pub(super) needing: usize,
    /// The rows.
    pub(super) rows: Vec<UnitRow>,
    /// Door numbers with nothing to tell.
    pub(super) quiet: Vec<String>,
}

/// What is on record of a part.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(in crate::console) struct PartNow {
    /// Locked or not.
    pub(in crate::console) state: LockNow,
    /// Since when.
    pub(in crate::console) since: Option<Stamp>,
}

/// One unit's row.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(in crate::console) struct UnitRow {
    /// Door number.
    pub(in crate::console) unit: String,
    /// Its mark.
    pub(in crate::console) pair: Pair,
    /// The road.
    pub(in crate::console) road: PartNow,
    /// The air.
    pub(in crate::console) air: PartNow,
    /// Outlets that are locked, by name.
    pub(in crate::console) outlets: Vec<String>,
    /// How many outlets it has by name.
    pub(in crate::console) outlets_of: usize,
    /// Its one line of the day.
    pub(in crate::console) today: ExpectedRow,
    /// Hours as last read on its meter, and when.
    pub(in crate::console) hours: Option<Tenths>,
    pub(in crate::console) read_at: Option<Stamp>,
    /// A question about its readings is open.
    pub(in crate::console) disputed: bool,
    /// The task that runs out first; where no pace is known, the first by hours and the first by days.
    pub(in crate::console) first: Vec<DueRow>,
    /// What its oil use comes to; none when too little is known.
    pub(in crate::console) oil: Option<OilUse>,
    /// The phone that wrote of it last, and when anything was heard from it.
    pub(in crate::console) phone: Option<String>,
    pub(in crate::console) heard: Option<Stamp>,
    /// Defects that are not over.
    pub(in crate::console) open_defects: usize,
    /// Questions about readings and services.
    pub(in crate::console) to_settle: usize,
    /// Makers' campaigns that are to be done on it.
    pub(in crate::console) campaigns: usize,
    /// Makers' campaigns for which a person must look at it.
    pub(in crate::console) campaigns_to_look: usize,
    /// Why it needs someone: `locked`, `defect`, `not-reported`, `due`, `to-settle`, `reminder`, `oil`,
    /// `campaign` where a person must look.
    pub(in crate::console) needs: Vec<&'static str>,
}

pub(super) fn read(ledger: &Ledger, now: Stamp, asked: &Asked) -> Result<UnitsView, ShopError> {
    let yard = Yard::of(ledger, ledger.fleet().yard_day(now), now)?;
    let mut rows = rows(ledger, &yard, &units_now(ledger, &yard)?)?;
    let count = rows.len();
    let find = asked.find.as_deref().map(str::trim).filter(|find| !find.is_empty()).map(str::to_owned);
    if let Some(find) = &find {
        rows.retain(|row| holds(&row.unit, find));
    }
    let table = asked.table || find.is_some();
    let needing = rows.iter().filter(|row| !row.needs.is_empty()).count();
    let quiet = rows.iter().filter(|row| !table && row.needs.is_empty()).map(|row| row.unit.clone());
    let quiet: Vec<String> = quiet.collect();
    rows.retain(|row| table || !row.needs.is_empty());
    // Pages are cut by door number, whatever the rows of one are then sorted by.
    let ends = |rows: &[UnitRow]| Some((rows.first()?.unit.clone(), rows.last()?.unit.clone()));
    let pages: Vec<(String, String)> = rows.chunks(PAGE).filter_map(ends).collect();
    let page = asked.page.unwrap_or(1).clamp(1, pages.len().max(1));
    let mut rows: Vec<UnitRow> =
        rows.into_iter().skip(page.saturating_sub(1).saturating_mul(PAGE)).take(PAGE).collect();
    sort(&mut rows, asked.sort);
    let known_at = yard.stamp(now.moment());
    Ok(UnitsView { known_at, count, find, sort: asked.sort, table, page, pages, needing, rows, quiet })
}

/// Rows of these units, in their order.
pub(in crate::console) fn rows(
    ledger: &Ledger,
    yard: &Yard,
    units: &[UnitNow],
) -> Result<Vec<UnitRow>, ShopError> {
    let states: Vec<_> = units.iter().map(|unit| (unit.door.as_str(), &unit.state)).collect();
    let list = due::list(ledger, yard, &states, Standing::FarOff)?;
    let mut of: BTreeMap<String, Vec<DueRow>> = BTreeMap::new();
    for row in list.into_every_row() {
        of.entry(row.unit.clone()).or_default().push(row);
    }
    let row = |unit| row(ledger, yard, unit, &of.remove(&unit.door).unwrap_or_default());
    Ok(units.iter().map(row).collect())
}

/// What presses most: the less, the more.
fn pressing(row: &DueRow) -> u8 {
    match row.state.as_str() {
        "past-due" => 0,
        "due-today" => 1,
        "coming-up" => 2,
        _ => 3,
    }
}

/// What runs out first: the worst that is past or at its end; else, where the pace is known, the first by the day
/// its first clock runs out. Hours and days do not compare while no pace is known: then the fewest hours left and,
/// where that is another task, the fewest days.
fn first(rows: &[DueRow]) -> Vec<DueRow> {
    if let Some(over) = rows.iter().filter(|row| pressing(row) < 2).min_by_key(|row| pressing(row)) {
        return vec![over.clone()];
    }
    // The list's own order is by that day.
    if rows.iter().any(|row| row.forecast.is_some()) {
        return rows.first().cloned().into_iter().collect();
    }
    let hours = |row: &&DueRow| {
        let left: Option<f64> = row.hours_left.as_deref().and_then(|left| left.parse().ok());
        // Whole ten-thousandths: as fine as the figure is.
        left.map(|left| (left * 10_000.0).round() as i64)
    };
    let by_hours = rows.iter().filter(|row| hours(row).is_some()).min_by_key(hours);
    let by_days = rows.iter().filter(|row| row.days_left.is_some()).min_by_key(|row| row.days_left);
    let mut first: Vec<DueRow> = by_hours.into_iter().chain(by_days).cloned().collect();
    first.sort_by_key(pressing);
    first.dedup();
    first
}

fn row(ledger: &Ledger, yard: &Yard, unit: &UnitNow, tasks: &[DueRow]) -> UnitRow {
    let (road, air) = (part(&unit.locked, "road"), part(&unit.locked, "air"));
    let mut outlets: Vec<String> =
        unit.locked.iter().filter_map(|row| row.lock.strip_prefix("outlet/")).map(str::to_owned).collect();
    outlets.sort();
    outlets.dedup();
    let heard = unit.phone.as_ref().and_then(|phone| phone.last_heard);
    let twice: usize =
        unit.state.clocks.iter().flat_map(|clock| &clock.entered_twice).filter(|two| !two.settled).count();
    let to_settle = unit.to_settle.len().saturating_add(twice);
    // A set that is laid up waits for its list; its clocks are read then.
    let due = tasks
        .iter()
        .filter(|row| row.laid_up_since.is_none())
        .any(|row| pressing(row) < 3 || row.state == "unknown");
    let open_defects = unit.open_defects();
    let oil = OilUse::of(&unit.state.oil, ledger.fleet());
    let (campaigns, campaigns_to_look) = campaigns_of(ledger, yard, unit);
    let needs = [
        ("locked", !unit.locked.is_empty()),
        ("defect", open_defects > 0),
        ("not-reported", unit.today.state == "not-reported"),
        ("due", due),
        ("to-settle", to_settle > 0),
        ("reminder", unit.state.cleared.is_some()),
        ("oil", oil.is_some_and(|oil| oil.is_alarm())),
        ("campaign", campaigns_to_look > 0),
    ];
    let last = unit.state.hours.last.as_ref();
    UnitRow {
        unit: unit.door.clone(),
        pair: Pair {
            road: road.state,
            air: air.state,
            outlet: !outlets.is_empty(),
            old_news: is_old_news(yard, heard),
        },
        road,
        air,
        outlets,
        outlets_of: ledger.fleet().trucks.get(&unit.truck).map_or(0, |truck| truck.features.valves.len()),
        today: unit.today.clone(),
        hours: last.map(|reading| reading.figure),
        read_at: last.map(|reading| yard.stamp(reading.at)),
        disputed: !unit.to_settle.is_empty(),
        first: first(tasks),
        oil,
        phone: unit.phone.as_ref().map(|phone| phone.phone.clone()),
        heard,
        open_defects,
        to_settle,
        campaigns,
        campaigns_to_look,
        needs: needs.into_iter().filter(|(_, is)| *is).map(|(why, _)| why).collect(),
    }
}

/// Campaigns that are to be done on a unit, and those for which a person must look at it.
fn campaigns_of(ledger: &Ledger, yard: &Yard, unit: &UnitNow) -> (usize, usize) {
    let hours = unit.state.hours_at(yard.cut());
    let stand = unit.state.campaigns.iter().filter_map(|now| {
        let told = ledger.fleet().campaigns.get(&now.task)?.by(yard.cut_ms).last()?;
        Some(stands(&told.what, now.is, now.done, hours, yard.day))
    });
    let stand: Vec<CampaignStands> = stand.collect();
    let open = |one: &&CampaignStands| matches!(one, CampaignStands::Open | CampaignStands::PastDeadline);
    let look = |one: &&CampaignStands| matches!(one, CampaignStands::Look(_));
    (stand.iter().filter(open).count(), stand.iter().filter(look).count())
}

/// The worst that stands of one part, since the earliest.
fn part(locked: &[LockedRow], part: &str) -> PartNow {
    let of = || locked.iter().filter(|row| row.lock == part);
    let state = of().map(|row| match row.certified {
        Some(_) => LockNow::AwaitingReview,
        None => LockNow::Locked,
    });
    PartNow { state: state.max().unwrap_or_default(), since: of().map(|row| row.since).min() }
}

fn sort(rows: &mut [UnitRow], by: Sort) {
    let today = |row: &UnitRow| match row.today.state.as_str() {
        "not-reported" => 0,
        "due-out" => 1,
        "done" | "covered" => 2,
        _ => 3,
    };
    match by {
        Sort::Unit => {}
        // A stable sort: within the same the door numbers stay in their order.
        Sort::RoadAir => rows.sort_by_key(|row| {
            std::cmp::Reverse((row.road.state.max(row.air.state), row.road.state, !row.outlets.is_empty()))
        }),
        Sort::Today => rows.sort_by_key(today),
        Sort::Oil => rows.sort_by_key(|row| {
            let alarm = row.oil.is_some_and(|oil| oil.is_alarm());
            std::cmp::Reverse((alarm, row.oil.and_then(|oil| oil.times_tenths)))
        }),
        Sort::Hours => rows.sort_by_key(|row| std::cmp::Reverse(row.hours)),
        Sort::First => rows.sort_by_key(|row| {
            row.first.first().map_or((9, None), |first| {
                (pressing(first), row.first.iter().filter_map(|task| task.days_left).min())
            })
        }),
        Sort::Heard => rows.sort_by_key(|row| row.heard),
        Sort::Open => {
            rows.sort_by_key(|row| {
                std::cmp::Reverse(
                    row.open_defects.saturating_add(row.to_settle).saturating_add(row.campaigns),
                )
            });
        }
    }
}

/// Whether a door number holds what was typed, capitals and leading zeros aside.
fn holds(door: &str, typed: &str) -> bool {
    door.to_lowercase().contains(&typed.to_lowercase())
}

/// The door that is meant: the one of that number, else the only one that ends with it.
pub(super) fn meant(doors: &[String], typed: &str) -> Option<String> {
    let typed = typed.trim().to_lowercase();
    let number = |text: &str| text.trim_start_matches('0').to_owned();
    let exact = doors.iter().find(|door| door.to_lowercase() == typed);
    let tail = |door: &&String| {
        let tail = door.to_lowercase().rsplit(|c: char| !c.is_ascii_digit()).next().map(number);
        !typed.is_empty() && typed.bytes().all(|b| b.is_ascii_digit()) && tail == Some(number(&typed))
    };
    exact
        .or_else(|| {
            let mut ending = doors.iter().filter(tail);
            ending.next().filter(|_| ending.next().is_none())
        })
        .cloned()
}

/// What all door numbers begin with, up to and with its last sign that is no digit; shown small.
pub(super) fn prefix(doors: &[String]) -> &str {
    let Some(first) = doors.first() else { return "" };
    let same = doors.iter().skip(1).fold(first.len(), |same, door| {
        let both = first.bytes().zip(door.bytes()).take(same);
        both.take_while(|(a, b)| a == b).count()
    });
    let common = first.get(..same).unwrap_or_default();
    let end = common.rfind(|c: char| !c.is_ascii_digit()).and_then(|at| {
        common.get(at..).and_then(|rest| rest.chars().next()).map(|c| at.saturating_add(c.len_utf8()))
    });
    common.get(..end.unwrap_or(0)).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn doors(all: &[&str]) -> Vec<String> {
        all.iter().map(|door| (*door).to_owned()).collect()
    }

    #[test]
    fn a_number_typed_short_finds_its_door_and_two_that_match_find_none() {
        let all = doors(&["TH-01", "TH-02", "TH-11", "B-11"]);
        assert_eq!(meant(&all, "th-02").as_deref(), Some("TH-02"));
        assert_eq!(meant(&all, "1").as_deref(), Some("TH-01"));
        assert_eq!(meant(&all, "01").as_deref(), Some("TH-01"));
        assert_eq!(meant(&all, "11"), None);
        assert_eq!(meant(&all, "TH"), None);
        assert_eq!(meant(&all, ""), None);
    }

    #[test]
    fn what_all_doors_share_is_their_prefix_and_never_part_of_a_number() {
        assert_eq!(prefix(&doors(&["TH-01", "TH-02", "TH-08"])), "TH-");
        assert_eq!(prefix(&doors(&["TH-01"])), "TH-");
        assert_eq!(prefix(&doors(&["101", "102"])), "");
        assert_eq!(prefix(&doors(&["TH-01", "B-02"])), "");
        assert_eq!(prefix(&doors(&["ñ-1", "ó-1"])), "");
        assert_eq!(prefix(&[]), "");
    }
}
