//! To come in the next commit.

use axum::Router;

use super::Console;

pub(super) fn routes() -> Router<Console> {
    Router::new()
}
