//! A photo, as the phone kept it.

use axum::Router;
use axum::extract::{Path, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use sumpbook_daybook::photo::PhotoKind;
use sumpbook_trade::record::Digest;

use super::Console;
use super::refused::Refused;
use super::visit::Visit;

/// Its page.
pub(super) fn routes() -> Router<Console> {
    Router::new().route("/photo/{sha256}", get(photo))
}

/// Where a photo is.
pub(super) fn href(photo: &str) -> String {
    format!("/photo/{photo}")
}

/// `GET /photo/{sha256}`: "not there" also while it is on its way.
async fn photo(
    State(console): State<Console>,
    _: Visit,
    Path(name): Path<String>,
) -> Result<Response, Refused> {
    let photo: Digest = name.parse().map_err(|_| Refused::NotThere)?;
    let photos = console.hub().photos();
    let read = tokio::task::spawn_blocking(move || photos.read(photo)).await;
    let read = read.map_err(|error| Refused::Broken(error.to_string()))?;
    let bytes = read.map_err(|error| Refused::Broken(error.to_string()))?.ok_or(Refused::NotThere)?;
    // Looked at again here: what is shown as a picture is one, whoever put the file there.
    let kind = PhotoKind::of(&bytes).ok_or(Refused::NotThere)?;
    Ok(([(header::CONTENT_TYPE, kind.media_type())], bytes).into_response())
}
