//! Air for the job: is there air enough here, today, for these tools on this hose? A calculator. It records
//! nothing, warns and refuses nothing.

mod asked;
mod page;

use axum::Router;
use axum::response::Response;
use axum::routing::get;
use serde::Serialize;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::screen::{AirForTheJob, air_for_the_job};
use sumpbook_trade::Stamp;

use super::Console;
use super::form::Fields;
use super::language::Measures;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;
use crate::ShopError;
use crate::console::query::Query;

/// Its page.
pub(super) fn routes() -> Router<Console> {
    Router::new().route("/air", get(air))
}

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct AirView {
    known_at: Stamp,
    /// Door numbers.
    units: Vec<String>,
    /// What each tool is called, in the order of the form.
    tool_names: Vec<String>,
    /// What was asked, as it was understood, and the answer: the phone's record.
    job: AirForTheJob,
}

/// `GET /air?unit=TH-01&holds=100&...`
async fn air(visit: Visit, Query(fields): Query<Vec<(String, String)>>) -> Result<Response, Refused> {
    let measures = visit.measures();
    visit
        .show(
            Place::Air,
            move |ledger, now| read(ledger, now, &Fields(fields), measures).map(Some),
            page::body,
        )
        .await
}

fn read(ledger: &Ledger, now: Stamp, fields: &Fields, own: Measures) -> Result<AirView, ShopError> {
    let fleet = ledger.fleet();
    let mut units: Vec<String> = fleet.trucks.values().map(|truck| truck.door.clone()).collect();
    units.sort();
    let unit = fields.text("unit").and_then(|door| fleet.truck_by_door(door));
    let query = asked::of(fields, own, unit.map(|truck| truck.truck));
    Ok(AirView {
        known_at: now,
        units,
        tool_names: asked::tool_names(fields),
        job: air_for_the_job(ledger, &query, now)?,
    })
}
