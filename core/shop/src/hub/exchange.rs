//! `POST /v1/exchange`: a phone's parcel in, the shop's answer out.

use std::net::SocketAddr;
use std::sync::atomic::Ordering;

use axum::Extension;
use axum::body::Bytes;
use axum::extract::{ConnectInfo, State};
use axum::http::{HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use sumpbook_daybook::exchange::{Ahead, CodeState, Declined, ExchangeError};
use sumpbook_daybook::ledger::LedgerError;
use sumpbook_daybook::phone::online::{CHALLENGE, WHY, Why};
use sumpbook_daybook::store::StoreError;

use super::error::unwritten;
use super::limits::Limits;
use super::{Hub, HubError};

/// What a parcel is called on the wire.
const PARCEL: &str = "application/zstd";
/// Seconds after which a phone tries again when the disk is full.
const FULL_WAIT_S: u64 = 60;

/// Answers one parcel. Whatever the answer, it brings the challenge for the next one.
pub(super) async fn exchange(
    State(hub): State<Hub>,
    Extension(limits): Extension<Limits>,
    ConnectInfo(from): ConnectInfo<SocketAddr>,
    parcel: Bytes,
) -> Response {
    let ahead = hub.read_ahead(parcel.clone()).await;
    let signer = ahead.as_ref().map(|ahead| ahead.signer().0);
    let mut response = match limits.parcel(&hub, from.ip(), signer) {
        Ok(()) => answer(&hub, parcel, ahead).await,
        Err(wait) => wait.into_response(),
    };
    if let Ok(challenge) = hub.fresh_challenge() {
        let hex = format!("{:032x}", u128::from_be_bytes(challenge));
        if let Ok(value) = HeaderValue::from_str(&hex) {
            response.headers_mut().insert(CHALLENGE, value);
        }
    }
    // Nothing keeps the answer to a POST that does not say how long it is fresh (RFC 9111, 3): no header for it.
    response
}

async fn answer(hub: &Hub, parcel: Bytes, ahead: Option<Ahead>) -> Response {
    let figures = hub.figures();
    match hub.respond(parcel, ahead).await {
        Ok(Ok(answered)) => {
            figures.exchanges.fetch_add(1, Ordering::Relaxed);
            figures.admitted.fetch_add(answered.admitted as u64, Ordering::Relaxed);
            tracing::info!(
                device = %answered.device, admitted = answered.admitted, known = answered.known,
                missing = answered.missing, refused = answered.refused, given = answered.given,
                stopped = answered.stopped, asks = answered.pending.is_some(), "exchanged"
            );
            ([(header::CONTENT_TYPE, PARCEL)], answered.bytes).into_response()
        }
        Ok(Err(declined)) => {
            let figure = match declined {
                Declined::StaleChallenge => &figures.challenged,
                _ => &figures.refused,
            };
            figure.fetch_add(1, Ordering::Relaxed);
            let (status, words, wait) = told(&declined);
            tracing::info!(status = status.as_u16(), why = %declined, "declined");
            let mut response = refusal(status, words, wait);
            if let Declined::Code(state) = &declined {
                response.headers_mut().insert(WHY, HeaderValue::from_static(Why::of(state).word()));
            }
            response
        }
        Err(error) => {
            figures.refused.fetch_add(1, Ordering::Relaxed);
            let (status, wait) = match &error {
                HubError::Busy | HubError::Stopping => (StatusCode::SERVICE_UNAVAILABLE, Some(1)),
                HubError::Unwritten { .. } => (StatusCode::SERVICE_UNAVAILABLE, Some(FULL_WAIT_S)),
                _ => (StatusCode::INTERNAL_SERVER_ERROR, None),
            };
            tracing::warn!(status = status.as_u16(), %error, "not answered");
            refusal(status, error.to_string(), wait)
        }
    }
}

fn refusal(status: StatusCode, words: String, wait_s: Option<u64>) -> Response {
    let mut response = (status, words).into_response();
    if let Some(wait) = wait_s {
        response.headers_mut().insert(header::RETRY_AFTER, HeaderValue::from(wait));
    }
    response
}

/// The status, the words for a person, and seconds to wait.
fn told(declined: &Declined) -> (StatusCode, String, Option<u64>) {
    let say = |status, words: &str| (status, words.to_owned(), None);
    match declined {
        Declined::StaleChallenge => {
            say(StatusCode::CONFLICT, "That challenge no longer holds. Ask again with the one given here.")
        }
        Declined::NotAParcel(_) | Declined::NotARequest => {
            say(StatusCode::BAD_REQUEST, "This is no request of a phone. Nothing was recorded.")
        }
        Declined::UnknownSender(_) => say(
            StatusCode::UNAUTHORIZED,
            "The shop does not know this phone. Nothing was recorded; all is kept on the phone. Ask the shop for a code.",
        ),
        Declined::Signature(_) => {
            say(StatusCode::UNAUTHORIZED, "The signature does not hold. Nothing was recorded. Send it again.")
        }
        Declined::OtherFleet => say(
            StatusCode::FORBIDDEN,
            "This is another fleet's shop. Nothing was recorded; all is kept on the phone.",
        ),
        Declined::Code(state) => say(StatusCode::FORBIDDEN, of_code(state)),
        Declined::NotTheShop => say(StatusCode::INTERNAL_SERVER_ERROR, "No shop answers here."),
        Declined::Failed(ExchangeError::Ledger(LedgerError::Store(StoreError::Full))) => {
            (StatusCode::SERVICE_UNAVAILABLE, unwritten(true).to_owned(), Some(FULL_WAIT_S))
        }
        Declined::Failed(error) => (
            StatusCode::INTERNAL_SERVER_ERROR,
            format!(
                "The shop could not do it: {error} Nothing of this was recorded; all is kept on the phone."
            ),
            None,
        ),
    }
}

fn of_code(state: &CodeState) -> &'static str {
    match state {
        CodeState::Expired(_) => {
            "That code ran out after 15 minutes. Nothing was added. Ask the shop for a new one."
        }
        CodeState::Used(_) => "Another phone used that code. Nothing was added. Ask the shop for a new one.",
        CodeState::Unknown | CodeState::Open => {
            "The shop never gave that code. Nothing was added. Ask the shop for a new one."
        }
    }
}
