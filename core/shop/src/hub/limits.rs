//! How much one address may ask: nobody can crowd the others out.

use std::net::{IpAddr, SocketAddr};
use std::num::NonZeroU32;
use std::sync::Arc;
use std::sync::atomic::Ordering;

use axum::extract::{ConnectInfo, Request, State};
use axum::http::{HeaderValue, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use governor::clock::{Clock, DefaultClock};
use governor::{DefaultKeyedRateLimiter, Quota, RateLimiter};

use super::Hub;

/// So many times as many at once as a second for long.
const AT_ONCE: u32 = 8;
/// Addresses remembered before the quiet ones are forgotten.
const MANY: usize = 10_000;

/// One count for each address.
#[derive(Clone)]
pub(super) struct Limits(Arc<DefaultKeyedRateLimiter<IpAddr>>);

impl Limits {
    pub(super) fn new(a_second: NonZeroU32) -> Limits {
        let at_once = a_second.saturating_mul(NonZeroU32::MIN.saturating_add(AT_ONCE - 1));
        Limits(Arc::new(RateLimiter::keyed(Quota::per_second(a_second).allow_burst(at_once))))
    }
}

/// Turns away who asks too often, before anything is read.
pub(super) async fn limit(
    State((limits, hub)): State<(Limits, Hub)>,
    ConnectInfo(from): ConnectInfo<SocketAddr>,
    request: Request,
    next: Next,
) -> Response {
    if limits.0.len() > MANY {
        limits.0.retain_recent();
    }
    match limits.0.check_key(&from.ip()) {
        Ok(()) => next.run(request).await,
        Err(until) => {
            hub.figures().refused.fetch_add(1, Ordering::Relaxed);
            let seconds = until.wait_time_from(DefaultClock::default().now()).as_secs().saturating_add(1);
            let words =
                format!("Too many requests from one address. Nothing was recorded. Wait {seconds} s.");
            let mut response = (StatusCode::TOO_MANY_REQUESTS, words).into_response();
            response.headers_mut().insert(header::RETRY_AFTER, HeaderValue::from(seconds));
            response
        }
    }
}
