//! The cab report: one page of one unit, to carry and to show. Black only, in both languages.

mod page;
mod view;

use axum::Router;
use axum::extract::Path;
use axum::response::Response;
use axum::routing::get;
use serde::Deserialize;
use sumpbook_trade::Stamp;

use super::Console;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;
use crate::console::query::Query;

/// Its page.
pub(super) fn routes() -> Router<Console> {
    Router::new().route("/units/{door}/cab-report", get(page))
}

#[derive(Debug, Default, Deserialize)]
#[serde(rename_all = "kebab-case")]
struct Asked {
    /// Milliseconds since 1970: the report as it was known then, to compare its check code.
    as_of: Option<i64>,
}

/// `GET /units/TH-03/cab-report`
async fn page(
    visit: Visit,
    Path(door): Path<String>,
    Query(asked): Query<Asked>,
) -> Result<Response, Refused> {
    let asked_door = door.clone();
    visit
        .show_unit(
            Place::Units,
            &asked_door,
            move |ledger, now| {
                let then =
                    asked.as_of.filter(|ms| *ms < now.unix_ms()).and_then(|ms| Stamp::from_parts(ms, 0));
                match then {
                    None => view::read(ledger, &door, now),
                    Some(then) => {
                        let upto = ledger.store().truth().upto(then.unix_ms())?;
                        view::read(&ledger.as_of(upto)?, &door, then)
                    }
                }
            },
            page::body,
        )
        .await
}
