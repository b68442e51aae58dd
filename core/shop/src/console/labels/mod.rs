//! What is printed to be scanned: a unit's door tag and a drum's label. Black only, and large: dirt takes its part.

mod page;
mod view;

use axum::Router;
use axum::extract::Path;
use axum::response::Response;
use axum::routing::get;
use serde::Deserialize;

use super::Console;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;
use crate::console::query::Query;

pub(super) use page::drum_address;

/// Their pages.
pub(super) fn routes() -> Router<Console> {
    Router::new().route("/units/{door}/door-tag", get(door)).route("/drum-label", get(drum))
}

#[derive(Debug, Default, Deserialize)]
#[serde(rename_all = "kebab-case")]
struct Asked {
    /// The oil's family, by its word in the records.
    family: Option<String>,
    /// Its grade, as a unit's profile has it.
    grade: Option<String>,
}

/// `GET /units/TH-03/door-tag`
async fn door(visit: Visit, Path(door): Path<String>) -> Result<Response, Refused> {
    let asked_door = door.clone();
    visit
        .show_unit(Place::Units, &asked_door, move |ledger, _| Ok(view::door(ledger, &door)), page::door)
        .await
}

/// `GET /drum-label?family=mineral&grade=ISO+VG+46`: an oil that is registered for a set of this fleet; none other, for
/// a label that somebody made up would be believed.
async fn drum(visit: Visit, Query(asked): Query<Asked>) -> Result<Response, Refused> {
    visit.show(Place::Units, move |ledger, _| Ok(view::drum(ledger, &asked)), page::drum).await
}
