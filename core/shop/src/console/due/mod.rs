//! Due and visits: what runs out first over the whole fleet, who comes in when, what is to be ordered.

mod campaigns;
mod page;
mod service;
mod visits;

use std::collections::BTreeMap;

use axum::Router;
use axum::response::Response;
use axum::routing::{get, post};
use serde::{Deserialize, Serialize};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::clock::TaskId;
use sumpbook_trade::record::{Role, WaitingForPart};
use sumpbook_trade::{Stamp, TruckId};

use super::Console;
use super::form::Fields;
use super::language::escaped;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;
use super::waits;
use crate::certify::open_defect;
use crate::console::query::Query;
use crate::plan::{FleetDue, Work, fleet_due_with, plan_visits};
use crate::sheet::{DefectRow, Yard, to_certify};
use crate::wait::wait_for_part;
use crate::{Shop, ShopError, service as services};

/// Its pages.
pub(super) fn routes() -> Router<Console> {
    Router::new()
        .route("/due", get(list))
        .route("/due/plan", post(plan))
        .route("/due/visit/cancel", post(visits::cancel))
        .route("/due/wait", post(wait))
        .route("/due/wait/over", post(waits::over))
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
    /// The defect this is about, of the unit that is named whole: `item`, or `item/place`. It is ticked beforehand.
    #[serde(default)]
    defect: String,
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
    /// The unit whose door number was given whole: all its tasks stand in the list, far off ones too.
    of_unit: Option<String>,
    /// Its defects that wait for a certificate, worst first.
    defects: Vec<DefectRow>,
    #[serde(flatten)]
    due: FleetDue,
}

/// `GET /due`
async fn list(visit: Visit, Query(asked): Query<Asked>) -> Result<Response, Refused> {
    visit
        .show(
            Place::Due,
            move |ledger, now| {
                let of_unit = ledger.fleet().truck_by_door(&asked.unit).map(|truck| truck.door.clone());
                let mut due = fleet_due_with(ledger, now, of_unit.as_deref())?;
                let of = asked.unit.trim().to_uppercase();
                due.rows.retain(|row| {
                    of_unit.as_ref().map_or_else(
                        || row.due.unit.to_uppercase().contains(&of),
                        |unit| row.due.unit == *unit,
                    ) && (asked.first.is_empty() || row.due.runs_out_first == asked.first)
                });
                let defects = match &of_unit {
                    Some(unit) => defects(ledger, now, unit)?,
                    None => Vec::new(),
                };
                let count = due.rows.len();
                due.rows = due.rows.into_iter().skip(asked.from).take(PAGE).collect();
                let works = |role: Role| matches!(role, Role::Mechanic | Role::Manager);
                let people = ledger.fleet().people.values().filter(|p| !p.gone && works(p.role));
                let mut who: Vec<String> = people.map(|person| person.name.clone()).collect();
                who.sort();
                let known_at = Stamp::from(now.moment().with_timezone(&ledger.fleet().zone).fixed_offset());
                Ok(Some(DueView { known_at, asked, count, who, of_unit, defects, due }))
            },
            page::body,
        )
        .await
}

/// `POST /due/plan`: a visit for each unit that has a ticked row.
async fn plan(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let ticked = Ticked::of(&fields)?;
    let day = fields.day("day")?.ok_or(Refused::Asked("plan-no-day"))?;
    // A number alone does not say what it is a number of.
    let bay = fields.text("bay").map(|bay| match bay.bytes().all(|byte| byte.is_ascii_digit()) {
        true => visit.say_with("plan-bay-number", &[("number", bay)]),
        false => bay.to_owned(),
    });
    let place: Vec<String> = bay.into_iter().chain(fields.owned("who")).collect();
    let place = (!place.is_empty()).then(|| place.join(", "));
    let planned = visit.act(move |shop, hand| {
        if day < shop.ledger.fleet().yard_day(hand.at) {
            return Ok(false);
        }
        let visits: Vec<(TruckId, Work)> = ticked.units(shop)?.into_iter().collect();
        plan_visits(shop, &visits, day, place, hand).map(|()| true)
    });
    if !planned.await? {
        return Err(Refused::Asked("plan-day-past"));
    }
    Ok(visit.go("/due#visits"))
}

/// Defects of a unit that wait for a certificate.
fn defects(ledger: &Ledger, now: Stamp, unit: &str) -> Result<Vec<DefectRow>, ShopError> {
    let yard = Yard::of(ledger, ledger.fleet().yard_day(now), now)?;
    let mut rows = to_certify(ledger, &yard)?;
    rows.retain(|row| row.unit == unit);
    Ok(rows)
}

/// `POST /due/wait`: the ticked rows wait for a part, or no longer.
async fn wait(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let ticked = Ticked::of(&fields)?;
    let part = fields.owned("part").ok_or(Refused::Asked("wait-no-part"))?;
    let (promised, over) = (fields.day("promised")?, fields.text("over").is_some());
    visit
        .write("/due", move |shop, hand| {
            for (truck, work) in ticked.units(shop)? {
                if !work.tasks.is_empty() {
                    services::known_tasks(shop, truck, &work.tasks)?;
                }
                let named = work.defects.iter().map(|named| open_defect(shop, truck, named));
                let defects = named.collect::<Result<Vec<_>, _>>()?;
                let of_tasks = work.tasks.into_iter().map(|task| (Some(task), None));
                for (task, defect) in of_tasks.chain(defects.into_iter().map(|defect| (None, Some(defect)))) {
                    let wait = WaitingForPart { task, part: part.clone(), promised, over, defect };
                    wait_for_part(shop, truck, wait, hand)?;
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
    // A defect is certified, not serviced.
    let tasks = ticked.0.iter().filter_map(|(door, what)| match what {
        What::Task(task) => Some(format!("tick={}%40{}", escaped(&task.0), escaped(door))),
        What::Defect(_) => None,
    });
    let ticks: Vec<String> = tasks.collect();
    if ticks.is_empty() {
        return Err(Refused::Asked("service-no-task"));
    }
    Ok(visit.go(format!("/due/service?{}", ticks.join("&"))))
}

/// What was ticked, each with the door number behind an `@`.
struct Ticked(Vec<(String, What)>);

enum What {
    Task(TaskId),
    /// `item`, or `item/place`.
    Defect(String),
}

impl Ticked {
    fn of(fields: &Fields) -> Result<Ticked, Refused> {
        let ticked = |name| fields.all(name).filter_map(|tick: &str| tick.rsplit_once('@'));
        let tasks = ticked("tick").map(|(task, door)| (door.to_owned(), What::Task(TaskId::from(task))));
        let defects = ticked("defect").map(|(item, door)| (door.to_owned(), What::Defect(item.to_owned())));
        let all: Vec<_> = tasks.chain(defects).collect();
        if all.is_empty() { Err(Refused::Asked("plan-none-ticked")) } else { Ok(Ticked(all)) }
    }

    fn units(&self, shop: &Shop) -> Result<BTreeMap<TruckId, Work>, ShopError> {
        let mut units: BTreeMap<TruckId, Work> = BTreeMap::new();
        for (door, what) in &self.0 {
            let work = units.entry(shop.unit(door)?).or_default();
            match what {
                What::Task(task) => work.tasks.push(task.clone()),
                What::Defect(item) => work.defects.push(item.clone()),
            }
        }
        Ok(units)
    }
}
