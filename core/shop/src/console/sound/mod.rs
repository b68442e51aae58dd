//! The sound of a defect, as the phone kept it, and how a page lets it be heard.

mod part;

use axum::Router;
use axum::extract::{Path, State};
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use maud::{Markup, html};
use sumpbook_daybook::sound::SoundKind;
use sumpbook_trade::record::Digest;

use super::Console;
use super::refused::Refused;
use super::visit::Visit;
use super::words::Words;

/// Its address.
pub(super) fn routes() -> Router<Console> {
    Router::new().route("/sound/{sha256}", get(sound))
}

/// Where a sound is.
pub(super) fn href(sound: &str) -> String {
    format!("/sound/{sound}")
}

/// A sound to be heard on the page: nothing is fetched before it is asked for, and where a browser does not play it,
/// the way to the file itself stands beside it.
pub(super) fn heard(words: &Words, sound: &str) -> Markup {
    let to = href(sound);
    html! {
        figure class="sound" {
            figcaption { (words.t("sound-of-defect")) " " a href=(to) { (words.t("sound-open")) } }
            audio controls preload="none" src=(to) aria-label=(words.t("sound-of-defect")) {}
        }
    }
}

/// `GET /sound/{sha256}`: "not there" also while it is on its way. Some browsers play nothing that they cannot ask for
/// in parts.
async fn sound(
    State(console): State<Console>,
    _: Visit,
    Path(name): Path<String>,
    headers: HeaderMap,
) -> Result<Response, Refused> {
    let sound: Digest = name.parse().map_err(|_| Refused::NotThere)?;
    let kept = console.hub().photos();
    let read = tokio::task::spawn_blocking(move || kept.read(sound)).await;
    let read = read.map_err(|error| Refused::Broken(error.to_string()))?;
    let bytes = read.map_err(|error| Refused::Broken(error.to_string()))?.ok_or(Refused::NotThere)?;
    // Looked at again here: what is played as a sound is one, whoever put the file there.
    let kind = SoundKind::of(&bytes).ok_or(Refused::NotThere)?;
    let wanted = headers.get(header::RANGE).and_then(|range| range.to_str().ok());
    let told = [
        (header::CONTENT_TYPE, HeaderValue::from_static(kind.media_type())),
        (header::ACCEPT_RANGES, HeaderValue::from_static("bytes")),
    ];
    let part = wanted.and_then(|range| part::wanted(range, bytes.len()));
    let Some((from, to)) = part else { return Ok((told, bytes).into_response()) };
    let of = HeaderValue::try_from(format!("bytes {from}-{}/{}", to.saturating_sub(1), bytes.len()));
    let of = of.map_err(|error| Refused::Broken(error.to_string()))?;
    let bytes = bytes.get(from..to).unwrap_or_default().to_vec();
    Ok((StatusCode::PARTIAL_CONTENT, told, [(header::CONTENT_RANGE, of)], bytes).into_response())
}
