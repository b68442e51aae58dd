//! `HEAD` and `PUT /v1/photo/{sha256}`: photos and sounds come in piece by piece, after the entries that name them.
//!
//! A piece that was cut on its way is as if it had never been sent: the phone asks how far the photo is, and goes
//! on from there.

mod coming;
mod token;

use axum::Router;
use axum::body::Bytes;
use axum::extract::rejection::BytesRejection;
use axum::extract::{DefaultBodyLimit, Path, State};
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use axum::routing::put;
use sumpbook_daybook::phone::online::{COMPLETE, LENGTH, OFFSET};
use sumpbook_daybook::photo::{MOST, PIECE, PhotoFolder};
use sumpbook_daybook::{KeyId, photo::PhotoError};
use sumpbook_trade::record::Digest;

pub(super) use coming::Coming;
use coming::{Added, Piece};
pub(super) use token::Tokens;

use super::error::unwritten;
use super::{Hub, HubError};

/// Seconds after which a phone tries again when the disk is full.
const FULL_WAIT_S: u64 = 60;

/// Where photos come in.
pub(super) fn routes() -> Router<Hub> {
    Router::new().route("/v1/photo/{sha256}", put(add).head(stands).layer(DefaultBodyLimit::max(PIECE)))
}

/// Why a photo, or a piece of one, is not taken.
enum No {
    /// No permission, or an old one.
    Permit,
    /// No entry here names it, or it is no name of a photo.
    NotNamed,
    /// The headers say no beginning or no length.
    Headers,
    /// Of the photo, or of the piece.
    TooLarge,
    /// The piece did not come whole.
    CutPiece,
    /// It does not begin where the last one ended.
    Elsewhere(u64),
    /// Together the pieces are not what the name says, or neither photo nor sound.
    NotThat(&'static str),
    /// The disk is full.
    Full,
    /// Anything else.
    Failed(HubError),
}

/// `HEAD`: how far it is.
async fn stands(
    State(hub): State<Hub>,
    Path(name): Path<String>,
    headers: HeaderMap,
) -> Result<Response, No> {
    let (from, photo) = allowed(&hub, &name, &headers).await?;
    let standing = on_disk(move || hub.0.coming.standing(from, photo)).await?;
    Ok(match standing {
        Added::Whole(size) => said(StatusCode::OK, size, true),
        Added::Part(offset) | Added::Elsewhere(offset) => said(StatusCode::OK, offset, false),
        _ => said(StatusCode::OK, 0, false),
    })
}

/// `PUT`: one piece.
async fn add(
    State(hub): State<Hub>,
    Path(name): Path<String>,
    headers: HeaderMap,
    body: Result<Bytes, BytesRejection>,
) -> Result<Response, No> {
    let (from, photo) = allowed(&hub, &name, &headers).await?;
    let bytes = body.map_err(|refused| match refused.status() {
        StatusCode::PAYLOAD_TOO_LARGE => No::TooLarge,
        _ => No::CutPiece,
    })?;
    let number = |name: &str| headers.get(name)?.to_str().ok()?.parse::<u64>().ok();
    let (Some(offset), Some(length)) = (number(OFFSET), number(LENGTH)) else { return Err(No::Headers) };
    if length > MOST as u64 {
        return Err(No::TooLarge);
    }
    if bytes.is_empty() || length == 0 {
        return Err(No::Headers);
    }
    let now = hub.now();
    let added = on_disk(move || {
        hub.0.coming.add(from, photo, &Piece { offset, length, bytes: &bytes }, now.unix_ms())
    });
    match added.await? {
        Added::Part(offset) => Ok(said(StatusCode::NO_CONTENT, offset, false)),
        Added::Whole(size) => Ok(said(StatusCode::CREATED, size, true)),
        Added::Elsewhere(offset) => Err(No::Elsewhere(offset)),
        Added::TooLong => Err(No::NotThat("The piece goes beyond the photo's length.")),
        Added::OtherHash => Err(No::NotThat("Together the pieces are not the photo of that name.")),
        Added::NotAPhoto => Err(No::NotThat(
            "This is no photo (JPEG, PNG, WebP) and no sound of at most 10 s (WAV, AAC in MP4): neither is kept.",
        )),
    }
}

/// Who may send this photo: a phone with a permission that holds, and only one that an entry here names.
async fn allowed(hub: &Hub, name: &str, headers: &HeaderMap) -> Result<(KeyId, Digest), No> {
    let from = hub.permitted(headers).ok_or(No::Permit)?;
    let photo: Digest = name.parse().map_err(|_| No::NotNamed)?;
    let read = hub.read(move |ledger| {
        let stopped = ledger.fleet().revoked.iter().any(|(id, _, _)| *id == from.0);
        Ok((stopped, !ledger.store().truth().naming_photo(photo)?.is_empty()))
    });
    match read.await.map_err(No::Failed)? {
        (true, _) => Err(No::Permit),
        (false, false) => Err(No::NotNamed),
        (false, true) => Ok((from, photo)),
    }
}

async fn on_disk<T: Send + 'static>(
    work: impl FnOnce() -> Result<T, PhotoError> + Send + 'static,
) -> Result<T, No> {
    let done = tokio::task::spawn_blocking(work).await;
    done.map_err(|error| No::Failed(error.into()))?.map_err(|error| match error {
        PhotoError::Full => No::Full,
        other => {
            tracing::error!(error = %other, "a photo was not taken");
            No::Failed(HubError::Unwritten { full: false })
        }
    })
}

/// How far a photo is.
fn said(status: StatusCode, offset: u64, complete: bool) -> Response {
    let mut response = status.into_response();
    let headers = response.headers_mut();
    headers.insert(OFFSET, HeaderValue::from(offset));
    headers.insert(COMPLETE, HeaderValue::from_static(if complete { "?1" } else { "?0" }));
    headers.insert(header::CACHE_CONTROL, HeaderValue::from_static("no-store"));
    response
}

impl IntoResponse for No {
    fn into_response(self) -> Response {
        let (status, words) = match &self {
            No::Permit => (
                StatusCode::UNAUTHORIZED,
                "No permission to send photos, or one that ran out. Nothing was kept of this; it is on the phone. Exchange first.",
            ),
            No::NotNamed => (
                StatusCode::NOT_FOUND,
                "No entry here names that photo or sound. Nothing was kept; it is on the phone. Send the entry first.",
            ),
            No::Headers => (
                StatusCode::BAD_REQUEST,
                "Say where the piece begins and how long the photo is. Nothing was kept of it.",
            ),
            No::TooLarge => (
                StatusCode::PAYLOAD_TOO_LARGE,
                "A piece has at most 256 KiB and a photo at most 4 MiB. Nothing was kept of this.",
            ),
            No::CutPiece => (
                StatusCode::BAD_REQUEST,
                "The piece did not come whole. Nothing was kept of it; what came before it is. Ask how far it is.",
            ),
            No::Elsewhere(_) => {
                (StatusCode::CONFLICT, "The piece does not begin where the last one ended. Go on from there.")
            }
            No::NotThat(words) => (StatusCode::UNPROCESSABLE_ENTITY, *words),
            No::Full => (StatusCode::SERVICE_UNAVAILABLE, unwritten(true)),
            No::Failed(HubError::Busy | HubError::Stopping) => {
                (StatusCode::SERVICE_UNAVAILABLE, "Too many ask at once. Try again in a second.")
            }
            No::Failed(_) => (StatusCode::INTERNAL_SERVER_ERROR, unwritten(false)),
        };
        let mut response = match &self {
            No::Elsewhere(offset) => {
                let mut response = said(status, *offset, false);
                *response.body_mut() = words.into();
                response
            }
            _ => (status, words).into_response(),
        };
        let headers = response.headers_mut();
        match &self {
            No::Full => {
                headers.insert(header::RETRY_AFTER, HeaderValue::from(FULL_WAIT_S));
            }
            No::Permit => {
                headers.insert(header::WWW_AUTHENTICATE, HeaderValue::from_static("Bearer"));
            }
            _ => {}
        }
        response
    }
}

impl Hub {
    /// The shop's photos.
    pub fn photos(&self) -> PhotoFolder {
        PhotoFolder::of(self.folder())
    }

    /// The phone that a request's permission was given to; none when it does not hold.
    fn permitted(&self, headers: &HeaderMap) -> Option<KeyId> {
        let said = headers.get(header::AUTHORIZATION)?.to_str().ok()?;
        let (scheme, token) = said.split_once(' ')?;
        let token: Digest = token.trim().parse().ok()?;
        self.0.tokens.holder(&token.0, self.now().unix_ms()).filter(|_| scheme.eq_ignore_ascii_case("bearer"))
    }
}
