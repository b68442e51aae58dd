//! May I take it, and where was I: one row a unit, and which main action the core picks.

use std::cmp::Reverse;

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::{PersonId, Stamp, TruckId};

use super::became::{self, BecameRow};
use super::defect_row::name;
use super::main_act::Main;
use super::news::{Counts, News, Standing};
use super::pre_trip::{Days, PreTripNow};
use super::road_air::RoadAir;
use crate::ledger::{Ledger, LedgerError, day_number};

/// Who looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TodayQuery {
    /// The person whose name stands at the top.
    pub person: PersonId,
}

/// Today.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TodayScreen {
    /// Whose.
    pub person: Option<String>,
    /// The yard's day.
    pub day: NaiveDate,
    /// How old the shop's news is.
    pub news: News,
    /// Where this phone's entries stand.
    pub counts: Counts,
    /// What became of the defects this person told, the newest first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub became: Vec<BecameRow>,
    /// Units: with a draft first, then those this person used last, then by door number.
    pub units: Vec<TodayRow>,
    /// Drafts of a newer version of this program, kept and not shown.
    pub unreadable_drafts: u32,
}

/// One unit's row.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TodayRow {
    /// The unit: the row's id.
    pub id: TruckId,
    /// Its door number.
    pub door: String,
    /// This person has a draft of it or used it in the last 14 days.
    pub mine: bool,
    /// Road and air.
    pub road_air: RoadAir,
    /// What the shop has it down as today.
    pub status: Option<DayStatus>,
    /// Expected out from this minute of the day.
    pub expected_minute: Option<u16>,
    /// Where its pre-trip stands.
    pub pre_trip: PreTripNow,
    /// What the main button does with this unit chosen.
    pub main: Main,
}

/// Days back in which a unit was "mine".
const MINE_DAYS: i32 = 14;

/// Today for a person.
///
/// # Errors
/// As reading the store.
pub fn today(
    ledger: &Ledger,
    query: &TodayQuery,
    standing: &Standing,
    now: Stamp,
) -> Result<TodayScreen, LedgerError> {
    let fleet = ledger.fleet();
    let day = fleet.yard_day(now);
    let kept = ledger.drafts()?;
    let drafts = &kept.drafts;
    let used = last_used(ledger, query.person, day)?;
    let (signed, none) = (Days::of_all(ledger, now)?, Days::default());
    let (mut units, mut became) = (Vec::new(), Vec::new());
    for truck in fleet.trucks.values() {
        let unit = truck.truck;
        let state = ledger.unit_state(unit)?;
        let pre_trip = PreTripNow::under_way(fleet, unit, drafts).unwrap_or_else(|| {
            PreTripNow::signed(fleet, signed.get(&unit).unwrap_or(&none), query.person, now)
        });
        let own_draft = drafts.iter().any(|d| d.unit() == unit && d.person() == query.person);
        let last = used.iter().find(|(used, _)| *used == unit).map(|(_, at)| *at);
        let on_roster = state.status_on(day);
        became.extend(became::of_unit(fleet, &state, query.person, standing, now));
        let row = TodayRow {
            id: unit,
            door: truck.door.clone(),
            mine: own_draft || last.is_some(),
            road_air: RoadAir::of(fleet, unit, &state, now),
            status: on_roster.map(|(status, _)| status),
            expected_minute: on_roster
                .and_then(|(_, minute)| minute)
                .filter(|_| pre_trip == PreTripNow::NotStarted),
            main: Main::ready(pre_trip.main(unit, drafts, query.person)),
            pre_trip,
        };
        units.push(((Reverse(own_draft), Reverse(last), truck.door.clone()), row));
    }
    units.sort_by(|a, b| a.0.cmp(&b.0));
    became.sort_by_key(|row| Reverse(row.since.map_or(row.told, |since| since.max(row.told))));
    Ok(TodayScreen {
        person: name(fleet, query.person.0),
        day,
        news: News::at(standing.heard, now),
        counts: standing.counts(),
        became,
        units: units.into_iter().map(|(_, row)| row).collect(),
        unreadable_drafts: super::news::count(kept.unreadable.len()),
    })
}

/// Units this person wrote about in the last days, each with the newest time.
pub(super) fn last_used(
    ledger: &Ledger,
    person: PersonId,
    day: NaiveDate,
) -> Result<Vec<(TruckId, i64)>, LedgerError> {
    let to = day_number(day);
    Ok(ledger.store().truth().units_of_person(person, to - MINE_DAYS, to)?)
}
