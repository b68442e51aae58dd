//! What an address asks for behind its question mark.

use axum::extract::FromRequestParts;
use axum::http::request::Parts;
use serde::de::DeserializeOwned;

use super::refused::Refused;

/// Read, or refused in our own words: `/due?from=abc` asks for nothing there is.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Query<T>(pub(super) T);

impl<T: DeserializeOwned, S: Send + Sync> FromRequestParts<S> for Query<T> {
    type Rejection = Refused;

    async fn from_request_parts(parts: &mut Parts, state: &S) -> Result<Query<T>, Refused> {
        let read = axum::extract::Query::<T>::from_request_parts(parts, state).await;
        read.map(|axum::extract::Query(asked)| Query(asked)).map_err(|_| Refused::Address)
    }
}
