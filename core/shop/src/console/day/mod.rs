//! The day sheet: what must I do now.

mod changes;
mod due;
mod evening;
pub(super) mod found;
mod head;
mod later;
mod morning;
mod sentence;
mod steps;
mod view;
mod visits;

use axum::Json;
use axum::Router;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use chrono::NaiveDate;
use maud::html;
use serde::{Deserialize, Serialize};

use super::Console;
use super::assets::href;
use super::place::Place;
use super::refused::Refused;
use super::visit::{Body, Telling, Visit};
use crate::close;
use crate::console::query::Query;
use crate::sheet::{Sections, View};

pub(super) use evening::state as expected;
pub(super) use found::{answer, certify_href, locks, next_step, numbered, others, photos};
pub(super) use steps::Steps;
pub(super) use view::DayView;

/// Its pages.
pub(super) fn routes() -> Router<Console> {
    Router::new()
        .route("/", get(today))
        .route("/day/{day}", get(page))
        .route("/day/{day}/mark", get(mark))
        .route("/day/{day}/close", post(close_day))
}

#[derive(Debug, Default, Deserialize)]
struct Asked {
    view: Option<View>,
    version: Option<u32>,
    after: Option<i64>,
}

/// `GET /`: today's, morning view before noon.
async fn today(visit: Visit, Query(asked): Query<Asked>) -> Result<Response, Refused> {
    let folder = visit.folder();
    let read = move |ledger: &_, now| view::of_today(ledger, &folder, asked.view, now).map(Some);
    visit.show(Place::Day, read, body).await
}

/// `GET /day/2026-10-20`
async fn page(
    visit: Visit,
    Path(day): Path<String>,
    Query(asked): Query<Asked>,
) -> Result<Response, Refused> {
    let day = date(&day)?;
    let folder = visit.folder();
    let read = move |ledger: &_, now| match asked.version {
        Some(version) => view::closed(ledger, day, version, now),
        None => view::open(ledger, &folder, day, asked.view, now).map(Some),
    };
    visit.show(Place::Day, read, body).await
}

/// What the page's script asks: how many entries came in since the page was made.
#[derive(Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct Mark {
    mark: i64,
    new: i64,
}

/// `GET /day/2026-10-20/mark?after=...`
async fn mark(
    State(console): State<Console>,
    _: Visit,
    Path(day): Path<String>,
    Query(asked): Query<Asked>,
) -> Result<Response, Refused> {
    date(&day)?;
    let last = console.hub().read(|ledger| Ok(ledger.store().truth().last_n()?)).await?;
    let new = asked.after.map_or(0, |after| last.saturating_sub(after).max(0));
    Ok(Json(Mark { mark: last, new }).into_response())
}

/// `POST /day/2026-10-20/close`: closes it as its next version.
async fn close_day(visit: Visit, Path(day): Path<String>) -> Result<Response, Refused> {
    let day = date(&day)?;
    visit.write(format!("/day/{day}"), move |shop, hand| close::close(shop, day, hand).map(|_| ())).await
}

fn date(text: &str) -> Result<NaiveDate, Refused> {
    text.parse().map_err(|_| Refused::NotThere)
}

fn body(telling: &Telling, view: &DayView) -> Body {
    let words = telling.of_day(view.sheet.day);
    let title = format!("{} · {}", telling.t("place-day"), words.plain_day(view.sheet.day));
    let main = html! {
        // On paper this hangs on the board.
        link rel="stylesheet" media="print" href=(href("board.css"));
        div class="board" {
            (head::draw(telling, &words, view))
            @match &view.sheet.view {
                Sections::Evening(sections) => {
                    @let steps = Steps::of(&sections.due.parts, view.open_now.as_ref());
                    (evening::draw(&words, sections, view.sheet.day == view.today, &steps))
                },
                Sections::Morning(sections) => {
                    @let steps = Steps::of(&sections.due.parts, view.open_now.as_ref());
                    (morning::draw(&words, sections, view.pages_to_type, &steps))
                },
            }
        }
    };
    Body { title, main }
}
