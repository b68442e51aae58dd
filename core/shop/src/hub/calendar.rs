//! `GET /calendar/SECRET.ics`: the feed of what runs out, for readers of calendars, who cannot sign in.

use axum::extract::{Path, Query, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;

use super::Hub;
use crate::calendar_feed::{Feed, keep, opens};

#[derive(Debug, Default, Deserialize)]
pub(super) struct Asked {
    /// The words' language by its tag.
    language: Option<String>,
}

/// Answers whoever knows the secret; to all others there is nothing here.
pub(super) async fn feed(
    State(hub): State<Hub>,
    Path(file): Path<String>,
    Query(asked): Query<Asked>,
) -> Response {
    let nothing = || (StatusCode::NOT_FOUND, "Nothing is at this address.").into_response();
    let Some(token) = file.strip_suffix(".ics").map(str::to_owned) else { return nothing() };
    let now = hub.now();
    let read = hub
        .read(move |ledger| {
            if !opens(ledger, &token)? {
                return Ok(None);
            }
            Feed::read(ledger, now).map(Some)
        })
        .await;
    let feed = match read {
        Ok(Some(feed)) if feed.moved() => hub.write(move |shop| keep(shop, now)).await,
        Ok(Some(feed)) => Ok(feed),
        Ok(None) => return nothing(),
        Err(error) => Err(error),
    };
    match feed {
        Ok(feed) => {
            let words = feed.to_ics(asked.language.as_deref().unwrap_or("en"));
            let headers = [
                (header::CONTENT_TYPE, "text/calendar; charset=utf-8"),
                (header::CACHE_CONTROL, "private, no-cache"),
                (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
                (header::REFERRER_POLICY, "no-referrer"),
            ];
            (headers, words).into_response()
        }
        Err(error) => {
            tracing::warn!(%error, "the calendar feed could not be made");
            (StatusCode::SERVICE_UNAVAILABLE, "The feed cannot be read now. Ask again later.").into_response()
        }
    }
}
