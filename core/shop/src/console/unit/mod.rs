//! One unit: its locks, its clocks, its hours, and everything recorded of it.

mod day_status;
mod fluids;
mod history;
mod hours;
mod lay_up;
mod oil;
mod page;
mod papers;
mod set;
pub(super) mod set_told;
mod tasks;
mod told;
mod view;

use axum::Router;
use axum::extract::Path;
use axum::response::{IntoResponse, Redirect, Response};
use axum::routing::{get, post};

use super::Console;
use super::language::escaped;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;
use crate::console::query::Query;

use view::Asked;

/// Its pages.
pub(super) fn routes() -> Router<Console> {
    Router::new()
        .route("/units/{door}", get(unit))
        .route("/units/{door}/papers", post(papers::keep))
        .route("/units/{door}/day-status", post(day_status::say))
        .route("/units/{door}/lay-up", post(lay_up::put_away))
        .route("/units/{door}/return", post(lay_up::answered))
        .route("/unit/{door}", get(moved))
}

/// `GET /units/TH-01`
async fn unit(
    visit: Visit,
    Path(door): Path<String>,
    Query(asked): Query<Asked>,
) -> Result<Response, Refused> {
    let asked_door = door.clone();
    visit
        .show_unit(
            Place::Units,
            &asked_door,
            move |ledger, now| view::read(ledger, now, &door, &asked),
            page::body,
        )
        .await
}

/// `GET /unit/TH-01`: as somebody may type it.
async fn moved(_: Visit, Path(door): Path<String>) -> Response {
    Redirect::permanent(&format!("/units/{}", escaped(&door))).into_response()
}
