//! Due and visits: what runs out first over the whole fleet, who comes in when, what is to be ordered.

mod campaigns;
mod page;
mod service;

use std::collections::BTreeMap;

use axum::Router;
use axum::extract::Query;
use axum::response::Response;
use axum::routing::{get, post};
use serde::{Deserialize, Serialize};
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::record::{Role, WaitingForPart};
use sumpbook_trade::{Stamp, TruckId};

use super::Console;
use super::form::Fields;
use super::language::escaped;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;
use crate::plan::{FleetDue, fleet_due, plan_visits};
use crate::{Shop, ShopError, service as services};

/// Its pages.
pub(super) fn routes() -> Router<Console> {
    Router::new()
        .route("/due", get(list))
        .route("/due/plan", post(plan))
        .route("/due/wait", post(wait))
        .route("/due/ticked", post(ticked))
        .route("/due/campaign", post(campaigns::enter))
        .route("/due/campaign/withdraw", post(campaigns::withdraw))
        .route("/due/campaign/look", post(campaigns::look))
        .route("/due/service", get(service::page).post(service::done))
}

/// Rows a page: more are turned to.
const PAGE: usize = 200;

/// What of the list is asked for.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct Asked {
    /// Only units whose door number has this in it.
    #[serde(default)]
    unit: String,
    /// Only rows where this clock runs out first: `hours` or `calendar`.
    #[serde(default)]
    first: String,
    /// Rows left out before the first one shown.
    #[serde(default)]
    from: usize,
}

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct DueView {
    known_at: Stamp,
    asked: Asked,
    /// Rows in all, of which at most 200 are in `due`.
    count: usize,
    /// Names that may do the work: mechanics and whoever runs the shop.
    who: Vec<String>,
    #[serde(flatten)]
    due: FleetDue,
}

/// `GET /due`
async fn list(visit: Visit, Query(asked): Query<Asked>) -> Result<Response, Refused> {
    visit
        .show(
            Place::Due,
            move |ledger, now| {
                let mut due = fleet_due(ledger, now)?;
                let of = asked.unit.trim().to_uppercase();
                due.rows.retain(|row| {
                    row.due.unit.to_uppercase().contains(&of)
                        && (asked.first.is_empty() || row.due.runs_out_first == asked.first)
                });
                let count = due.rows.len();
                due.rows = due.rows.into_iter().skip(asked.from).take(PAGE).collect();
                let works = |role: Role| matches!(role, Role::Mechanic | Role::Manager);
                let people = ledger.fleet().people.values().filter(|p| !p.gone && works(p.role));
                let mut who: Vec<String> = people.map(|person| person.name.clone()).collect();
                who.sort();
                let known_at = Stamp::from(now.moment().with_timezone(&ledger.fleet().zone).fixed_offset());
                Ok(Some(DueView { known_at, asked, count, who, due }))
            },
            page::body,
        )
        .await
}

/// `POST /due/plan`: a visit for each unit that has a ticked row.
async fn plan(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let ticked = Ticked::of(&fields)?;
    let day = fields.day("day")?.ok_or(Refused::Asked("plan-no-day"))?;
    let bay = fields.text("bay").map(str::to_owned);
    let place: Vec<String> = bay.into_iter().chain(fields.owned("who")).collect();
    let place = (!place.is_empty()).then(|| place.join(", "));
    let planned = visit.act(move |shop, hand| {
        if day < shop.ledger.fleet().yard_day(hand.at) {
            return Ok(false);
        }
        let visits = ticked.units(shop)?;
        plan_visits(shop, &visits, day, place, hand).map(|()| true)
    });
    if !planned.await? {
        return Err(Refused::Asked("plan-day-past"));
    }
    Ok(visit.go("/due#visits"))
}

/// `POST /due/wait`: the ticked rows wait for a part, or no longer.
async fn wait(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let ticked = Ticked::of(&fields)?;
    let part = fields.owned("part").ok_or(Refused::Asked("wait-no-part"))?;
    let (promised, over) = (fields.day("promised")?, fields.text("over").is_some());
    visit
        .write("/due", move |shop, hand| {
            for (truck, tasks) in ticked.units(shop)? {
                services::known_tasks(shop, truck, &tasks)?;
                for task in tasks {
                    let wait = WaitingForPart { task: Some(task), part: part.clone(), promised, over };
                    services::wait_for_part(shop, truck, wait, hand)?;
                }
            }
            Ok(())
        })
        .await
}

/// `POST /due/ticked`: on to the form of a service of the ticked rows. Not the form's own address, which would
/// then hold this session's token.
async fn ticked(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let ticked = Ticked::of(&fields)?;
    let ticks: Vec<String> = ticked
        .0
        .iter()
        .map(|(door, task)| format!("tick={}%40{}", escaped(&task.0), escaped(door)))
        .collect();
    Ok(visit.go(format!("/due/service?{}", ticks.join("&"))))
}

/// Rows that were ticked: the task, `@`, the door number.
struct Ticked(Vec<(String, TaskId)>);

impl Ticked {
    fn of(fields: &Fields) -> Result<Ticked, Refused> {
        let rows = fields.all("tick").filter_map(|tick| tick.split_once('@'));
        let ticked: Vec<_> = rows.map(|(task, door)| (door.to_owned(), TaskId::from(task))).collect();
        if ticked.is_empty() { Err(Refused::Asked("plan-none-ticked")) } else { Ok(Ticked(ticked)) }
    }

    fn units(&self, shop: &Shop) -> Result<Vec<(TruckId, Vec<TaskId>)>, ShopError> {
        let mut units: BTreeMap<TruckId, Vec<TaskId>> = BTreeMap::new();
        for (door, task) in &self.0 {
            units.entry(shop.unit(door)?).or_default().push(task.clone());
        }
        Ok(units.into_iter().collect())
    }
}
