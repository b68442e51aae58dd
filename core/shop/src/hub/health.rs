//! What the hub counts of itself, for whoever watches over it.

use std::sync::atomic::{AtomicU64, Ordering};

use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use serde::Serialize;

use super::Hub;

/// Counts since the hub began.
#[derive(Debug, Default)]
pub struct Figures {
    /// Parcels answered.
    pub exchanges: AtomicU64,
    /// Entries admitted by them.
    pub admitted: AtomicU64,
    /// Phones given a fresh challenge to ask again with: the usual first step after a pause, nobody is turned away.
    pub challenged: AtomicU64,
    /// Requests turned away.
    pub refused: AtomicU64,
}

#[derive(Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct Health {
    /// `up`, or what is wrong.
    state: &'static str,
    entries: i64,
    units: usize,
    phones: usize,
    exchanges: u64,
    admitted: u64,
    challenged: u64,
    refused: u64,
}

/// `GET /healthz`: 200 with figures while the books can be read, else 503.
pub(super) async fn healthz(State(hub): State<Hub>) -> Response {
    let read = hub
        .read(|ledger| {
            let fleet = ledger.fleet();
            Ok((ledger.store().truth().last_n()?, fleet.trucks.len(), fleet.devices.len()))
        })
        .await;
    let figures = hub.figures();
    let count = |figure: &AtomicU64| figure.load(Ordering::Relaxed);
    let (state, status, (entries, units, phones)) = match read {
        Ok(read) => ("up", StatusCode::OK, read),
        Err(error) => {
            tracing::error!(%error, "the books cannot be read");
            ("the books cannot be read", StatusCode::SERVICE_UNAVAILABLE, (0, 0, 0))
        }
    };
    let health = Health {
        state,
        entries,
        units,
        phones,
        exchanges: count(&figures.exchanges),
        admitted: count(&figures.admitted),
        challenged: count(&figures.challenged),
        refused: count(&figures.refused),
    };
    (status, Json(health)).into_response()
}
