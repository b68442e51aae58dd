//! Pages of paper: blank ones to print for a day without a phone, and signed ones typed in.

mod blank;
mod choose;
mod read;
mod sheet;
mod type_in;

use axum::Router;
use axum::body::Body;
use axum::extract::{Multipart, Path, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use sumpbook_trade::record::Digest;

use super::Console;
use super::language::escaped;
use super::refused::Refused;
use super::visit::Visit;
pub(super) use blank::both;
use crate::photos::{PhotoError, Photos};

/// Its pages.
pub(super) fn routes() -> Router<Console> {
    Router::new()
        .route("/paper", get(choose::page))
        .route("/paper/photo", post(photo))
        .route("/paper/{door}", get(type_in::page).post(read::keep))
        .route("/paper/{door}/blank", get(blank::page))
        .route("/photos/{digest}", get(picture))
}

/// `POST /paper/photo`: keeps the photo of a page, then on to typing it in.
async fn photo(
    visit: Visit,
    State(console): State<Console>,
    mut form: Multipart,
) -> Result<Response, Refused> {
    visit.may_write()?;
    let (mut unit, mut photo) = (String::new(), Vec::new());
    while let Some(field) = form.next_field().await.map_err(|_| Refused::Asked("form-unread"))? {
        match field.name() {
            Some("unit") => unit = field.text().await.map_err(|_| Refused::Asked("form-unread"))?,
            Some("photo") => {
                photo = field.bytes().await.map_err(|_| Refused::Asked("form-unread"))?.to_vec();
            }
            _ => {}
        }
    }
    let unit = unit.trim().to_owned();
    if unit.is_empty() {
        return Err(Refused::Asked("paper-no-unit"));
    }
    let way = format!("/paper/{}", escaped(&unit));
    if photo.is_empty() {
        return Ok(visit.go(way));
    }
    let photos = Photos::of(console.hub().folder());
    let kept = tokio::task::spawn_blocking(move || photos.keep(&photo)).await;
    let digest = kept.map_err(|error| Refused::Broken(error.to_string()))?.map_err(refused)?;
    Ok(visit.go(format!("{way}?photo={digest}")))
}

fn refused(error: PhotoError) -> Refused {
    match error {
        PhotoError::TooLarge(_) => Refused::Asked("photo-large"),
        PhotoError::NotAPhoto => Refused::Asked("photo-kind"),
        PhotoError::Damaged => Refused::Asked("photo-damaged"),
        PhotoError::File { .. } => Refused::Broken(error.to_string()),
    }
}

/// `GET /photos/...`: a photo of this shop, by the SHA-256 of what it holds.
async fn picture(
    _: Visit,
    State(console): State<Console>,
    Path(digest): Path<String>,
) -> Result<Response, Refused> {
    let digest: Digest = digest.parse().map_err(|_| Refused::NotThere)?;
    let photos = Photos::of(console.hub().folder());
    let read = tokio::task::spawn_blocking(move || photos.read(digest)).await;
    let read = read.map_err(|error| Refused::Broken(error.to_string()))?;
    let (kind, bytes) = read.map_err(|error| Refused::Broken(error.to_string()))?.ok_or(Refused::NotThere)?;
    // It never changes: another picture has another name. Kept by this browser alone.
    let headers = [(header::CONTENT_TYPE, kind), (header::CACHE_CONTROL, "private, max-age=31536000, immutable")];
    Ok((headers, Body::from(bytes)).into_response())
}
