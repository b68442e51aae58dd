//! Where is each unit: those that need someone, then the rest as a run of door numbers.

mod page;
mod view;

use axum::Router;
use axum::extract::State;
use axum::response::{IntoResponse, Redirect, Response};
use axum::routing::get;
use serde::Deserialize;

use super::Console;
use super::language::escaped;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;
use crate::console::query::Query;

pub(super) use page::hours;
use view::Asked;
pub(super) use view::{UnitRow, rows};

/// Its pages.
pub(super) fn routes() -> Router<Console> {
    Router::new().route("/units", get(units)).route("/find", get(find))
}

/// `GET /units`
async fn units(visit: Visit, Query(asked): Query<Asked>) -> Result<Response, Refused> {
    visit.show(Place::Units, move |ledger, now| view::read(ledger, now, &asked).map(Some), page::body).await
}

#[derive(Debug, Deserialize)]
struct Typed {
    #[serde(default)]
    unit: String,
}

/// `GET /find?unit=...`: to the unit that is meant, else to those whose number holds what was typed.
async fn find(
    State(console): State<Console>,
    _: Visit,
    Query(typed): Query<Typed>,
) -> Result<Response, Refused> {
    let read = console.hub().read(|ledger| {
        Ok(ledger.fleet().trucks.values().map(|truck| truck.door.clone()).collect::<Vec<String>>())
    });
    let to = match view::meant(&read.await?, &typed.unit) {
        Some(door) => format!("/units/{}", escaped(&door)),
        None => format!("/units?find={}", escaped(typed.unit.trim())),
    };
    Ok(Redirect::to(&to).into_response())
}
