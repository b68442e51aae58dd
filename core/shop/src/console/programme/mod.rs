//! Which services are due how often: the programme of the fleet, or of one unit, the shop's to edit.

mod given;
mod page;

use axum::Router;
use axum::response::Response;
use axum::routing::{get, post};
use serde::{Deserialize, Serialize};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::clock::Task;
use sumpbook_trade::{Stamp, Tenths};

use super::Console;
use super::form::Fields;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;
use crate::ShopError;
use crate::console::query::Query;

/// Its page, and the form on it.
pub(super) fn routes() -> Router<Console> {
    Router::new().route("/programme", get(programme).post(set)).route("/programme/fleets", post(give_back))
}

#[derive(Clone, Debug, Deserialize)]
struct Asked {
    unit: Option<String>,
}

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct ProgrammeView {
    known_at: Stamp,
    /// Of which unit; none: of every unit without one of its own.
    unit: Option<String>,
    /// The unit has one of its own already.
    own: bool,
    edition: u32,
    tasks: Vec<TaskRow>,
    /// Units with one of their own.
    own_units: Vec<String>,
    units: Vec<String>,
}

/// One task of it.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct TaskRow {
    task: String,
    hours: Option<Tenths>,
    months: Option<u32>,
    /// The early service of a new unit, at these hours.
    first_at: Option<Tenths>,
    /// Hours in dust count more.
    counts_weighted: bool,
    /// The unit's own display counts it.
    display_counts: bool,
    parts_lead_days: u32,
}

/// `GET /programme`, `GET /programme?unit=TH-04`
async fn programme(visit: Visit, Query(asked): Query<Asked>) -> Result<Response, Refused> {
    let unit = asked.unit.filter(|unit| !unit.trim().is_empty());
    let door = unit.clone().unwrap_or_default();
    visit
        .show_unit(Place::Due, &door, move |ledger, now| Ok(read(ledger, unit.as_deref(), now)), page::body)
        .await
}

fn read(ledger: &Ledger, unit: Option<&str>, now: Stamp) -> Option<ProgrammeView> {
    let fleet = ledger.fleet();
    let truck = match unit {
        Some(door) => Some(fleet.truck_by_door(door)?),
        None => None,
    };
    let programme = truck.map_or(&fleet.programme, |truck| fleet.programme_of(truck.truck));
    let mut units: Vec<String> = fleet.trucks.values().map(|truck| truck.door.clone()).collect();
    units.sort();
    let mut own_units: Vec<String> = fleet.own_programmes.keys().map(|truck| fleet.door(*truck)).collect();
    own_units.sort();
    Some(ProgrammeView {
        known_at: now,
        unit: truck.map(|truck| truck.door.clone()),
        own: truck.is_some_and(|truck| fleet.own_programmes.contains_key(&truck.truck)),
        edition: programme.edition,
        tasks: programme.tasks.iter().map(row).collect(),
        own_units,
        units,
    })
}

fn row(task: &Task) -> TaskRow {
    TaskRow {
        task: task.id.to_string(),
        hours: task.hours,
        months: task.months,
        first_at: task.first_service.as_ref().map(|first| first.at),
        counts_weighted: task.counts_weighted,
        display_counts: task.display_counts,
        parts_lead_days: task.parts_lead_days,
    }
}

/// `POST /programme`: all of its tasks at once, in their order.
async fn set(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let unit = fields.owned("unit");
    let then = unit.as_ref().map_or_else(
        || "/programme".to_owned(),
        |unit| format!("/programme?unit={}", super::language::escaped(unit)),
    );
    let tasks = given::tasks(&fields, visit.language())?;
    let seen = fields.text("edition").and_then(|edition| edition.parse::<u32>().ok());
    visit
        .write(then, move |shop, hand| {
            let truck = unit.map(|door| shop.unit(&door)).transpose()?;
            let fleet = shop.ledger.fleet();
            let before = truck.map_or(&fleet.programme, |truck| fleet.programme_of(truck));
            if seen.is_some_and(|seen| seen != before.edition) {
                return Err(ShopError::OtherEdition(before.edition));
            }
            let programme = given::programme(before, tasks);
            // One that says the same as the fleet's would part from it at the fleet's next edition.
            if programme.tasks == before.tasks {
                return Ok(());
            }
            shop.set_programme(truck, programme, hand)
        })
        .await
}

/// `POST /programme/fleets`: a unit goes by the fleet's programme again.
async fn give_back(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let unit = fields.owned("unit").ok_or(Refused::NotThere)?;
    let why = visit.say("programme-given-back");
    let then = format!("/programme?unit={}", super::language::escaped(&unit));
    visit
        .write(then, move |shop, hand| {
            let truck = shop.unit(&unit)?;
            shop.give_back_programme(truck, &why, hand).map(|_| ())
        })
        .await
}
