//! How does the crew do over weeks: the walks of everybody, whose the records are, what came again, how long repairs
//! took, what is past due.

mod page;

use axum::Router;
use axum::response::Response;
use axum::routing::get;
use serde::{Deserialize, Serialize};
use sumpbook_trade::Stamp;

use super::Console;
use super::place::Place;
use super::query::Query;
use super::refused::Refused;
use super::visit::Visit;
use crate::crew::{CrewWeeks, ENOUGH, crew_weeks};

/// Weeks that may be looked at; the first is shown unless another is asked for.
const WEEKS: [u32; 2] = [4, 13];

/// Its page.
pub(super) fn routes() -> Router<Console> {
    Router::new().route("/crew", get(crew))
}

#[derive(Debug, Default, Deserialize)]
struct Asked {
    weeks: Option<u32>,
}

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct CrewView {
    known_at: Stamp,
    weeks: u32,
    /// Checks below which nothing is a pattern.
    enough: usize,
    #[serde(flatten)]
    crew: CrewWeeks,
}

/// `GET /crew`, `GET /crew?weeks=13`
async fn crew(visit: Visit, Query(asked): Query<Asked>) -> Result<Response, Refused> {
    let [usual, _] = WEEKS;
    let weeks = asked.weeks.unwrap_or(usual);
    if !WEEKS.contains(&weeks) {
        return Err(Refused::Address);
    }
    visit
        .show(
            Place::People,
            move |ledger, now| {
                let known_at = Stamp::from(now.moment().with_timezone(&ledger.fleet().zone).fixed_offset());
                Ok(Some(CrewView { known_at, weeks, enough: ENOUGH, crew: crew_weeks(ledger, weeks, now)? }))
            },
            page::body,
        )
        .await
}
