//! In and out: older records in from tables, with a dry run first; tables, feed, packs, the fleet and backups out.

mod ask;
mod bring;
mod desk;
mod download;
mod dry_page;
pub(in crate::console) mod gap_case;
mod one;
mod page;
mod take;

use axum::Router;
use axum::extract::State;
use axum::http::{HeaderMap, header};
use axum::response::Response;
use axum::routing::{get, post};
use serde::{Deserialize, Serialize};

use super::Console;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;
use crate::console::query::Query;
use crate::sealed_key;
use crate::{calendar_feed, sheet::Yard};

pub(super) use ask::asked;
pub(super) use desk::Desk;

/// Its pages.
pub(super) fn routes() -> Router<Console> {
    Router::new()
        .route("/in-and-out", get(page))
        .route("/in-and-out/unit", post(one::enter))
        .route("/in-and-out/look", post(bring::look))
        .route("/in-and-out/dry-run/{seen}", get(bring::page))
        .route("/in-and-out/dry-run/{seen}/refused", get(bring::refused_rows))
        .route("/in-and-out/dry-run/{seen}/say", post(bring::say))
        .route("/in-and-out/dry-run/{seen}/bring-in", post(bring::bring_in))
        .route("/in-and-out/gaps", get(take::gaps))
        .route("/in-and-out/table/{kind}", get(take::table))
        .route("/in-and-out/pack", get(take::pack))
        .route("/in-and-out/calendar", post(take::calendar))
        .route("/in-and-out/fleet", post(take::fleet))
        .route("/in-and-out/backup", post(take::backup))
}

/// What the page holds.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct InOutView {
    /// Door numbers.
    units: Vec<String>,
    /// Where the hub serves the calendar feed, at the host this page was asked at; only to who may write.
    calendar: Option<String>,
    /// A phrase was made, so that backups can be.
    phrase: bool,
    /// So many rows were brought in just now.
    brought_in: Option<usize>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(rename_all = "kebab-case")]
struct Asked {
    brought_in: Option<usize>,
}

/// `GET /in-and-out`
async fn page(
    visit: Visit,
    State(console): State<Console>,
    Query(asked): Query<Asked>,
    headers: HeaderMap,
) -> Result<Response, Refused> {
    let host = headers.get(header::HOST).and_then(|value| value.to_str().ok()).unwrap_or_default().to_owned();
    let phrase = sealed_key::kept(console.hub().folder()).is_ok();
    let writes = visit.may_write().is_ok();
    let read = move |ledger: &sumpbook_daybook::ledger::Ledger, now| {
        let yard = Yard::of(ledger, ledger.fleet().yard_day(now), now)?;
        let calendar = if writes { calendar_feed::address(ledger)? } else { None };
        Ok(Some(InOutView {
            units: yard.units(ledger)?.into_iter().map(|(door, _)| door).collect(),
            calendar: calendar.map(|token| format!("https://{host}{}", calendar_feed::path(&token))),
            phrase,
            brought_in: asked.brought_in,
        }))
    };
    visit.show(Place::InOut, read, page::body).await
}
