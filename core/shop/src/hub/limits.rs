//! How much one address, and one phone, may ask: nobody can crowd the others out.
//!
//! A yard's phones stand behind one router and share its address. So a parcel counts against the phone that signed it,
//! once its signature is known, and what nobody known signed counts against its address. Before a parcel is read only
//! a coarse count of the address holds, so that reading itself cannot be made a burden.

use std::net::{IpAddr, SocketAddr};
use std::num::NonZeroU32;
use std::sync::Arc;
use std::sync::atomic::Ordering;

use axum::extract::{ConnectInfo, Request, State};
use axum::http::{HeaderValue, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use governor::clock::{Clock, DefaultClock};
use governor::{DefaultKeyedRateLimiter, NotUntil, Quota, RateLimiter};

use super::Hub;

/// So many times as many at once as a second for long.
const AT_ONCE: u32 = 8;
/// Before a parcel is read its address may send so many times as many as unknown senders may.
const BEFORE: u32 = 10;
/// Addresses or phones remembered before the quiet ones are forgotten.
const MANY: usize = 10_000;
/// Where parcels come in.
pub(super) const EXCHANGE: &str = "/v1/exchange";

/// What is counted, and by whom.
#[derive(Clone)]
pub(super) struct Limits(Arc<Counts>);

struct Counts {
    /// Requests of an address, but parcels of phones that are known.
    addresses: DefaultKeyedRateLimiter<IpAddr>,
    /// Parcels of an address before they are read.
    before: DefaultKeyedRateLimiter<IpAddr>,
    /// Parcels of a phone, by its key id.
    phones: DefaultKeyedRateLimiter<[u8; 8]>,
    /// An address is told of in the log once a minute: a flood fills no disk.
    told: DefaultKeyedRateLimiter<IpAddr>,
}

/// Whoever asks too often waits so many seconds.
pub(super) struct Wait {
    seconds: u64,
    /// It was one phone, and not one address.
    of_a_phone: bool,
}

impl Limits {
    pub(super) fn new(a_second: NonZeroU32) -> Limits {
        let times =
            |n: NonZeroU32, by: u32| n.saturating_mul(NonZeroU32::MIN.saturating_add(by.saturating_sub(1)));
        let quota = |n: NonZeroU32| Quota::per_second(n).allow_burst(times(n, AT_ONCE));
        Limits(Arc::new(Counts {
            addresses: RateLimiter::keyed(quota(a_second)),
            before: RateLimiter::keyed(quota(times(a_second, BEFORE))),
            phones: RateLimiter::keyed(quota(a_second)),
            told: RateLimiter::keyed(Quota::per_minute(NonZeroU32::MIN)),
        }))
    }

    /// Whether a parcel that was read may go on: of the phone that signed it, or of whoever is at this address.
    pub(super) fn parcel(&self, hub: &Hub, from: IpAddr, signer: Option<[u8; 8]>) -> Result<(), Wait> {
        match signer {
            Some(phone) => {
                let checked = held(&self.0.phones, &phone, true);
                self.noted(hub, from, checked)
            }
            None => self.address(hub, from),
        }
    }

    fn address(&self, hub: &Hub, from: IpAddr) -> Result<(), Wait> {
        let checked = held(&self.0.addresses, &from, false);
        self.noted(hub, from, checked)
    }

    fn before(&self, hub: &Hub, from: IpAddr) -> Result<(), Wait> {
        let checked = held(&self.0.before, &from, false);
        self.noted(hub, from, checked)
    }

    fn noted(&self, hub: &Hub, from: IpAddr, checked: Result<(), Wait>) -> Result<(), Wait> {
        if let Err(wait) = &checked {
            hub.figures().refused.fetch_add(1, Ordering::Relaxed);
            if held(&self.0.told, &from, false).is_ok() {
                let status = StatusCode::TOO_MANY_REQUESTS.as_u16();
                tracing::warn!(
                    status, address = %from, of_a_phone = wait.of_a_phone, wait_s = wait.seconds, "asks too often"
                );
            }
        }
        checked
    }
}

fn held<K: std::hash::Hash + Eq + Clone>(
    limiter: &DefaultKeyedRateLimiter<K>,
    key: &K,
    of_a_phone: bool,
) -> Result<(), Wait> {
    if limiter.len() > MANY {
        limiter.retain_recent();
    }
    limiter.check_key(key).map_err(|until: NotUntil<_>| {
        let seconds = until.wait_time_from(DefaultClock::default().now()).as_secs().saturating_add(1);
        Wait { seconds, of_a_phone }
    })
}

impl IntoResponse for Wait {
    fn into_response(self) -> Response {
        let who = if self.of_a_phone { "this phone" } else { "one address" };
        let words = format!("Too many requests from {who}. Nothing was recorded. Wait {} s.", self.seconds);
        let mut response = (StatusCode::TOO_MANY_REQUESTS, words).into_response();
        response.headers_mut().insert(header::RETRY_AFTER, HeaderValue::from(self.seconds));
        response
    }
}

/// Turns away who asks too often, before anything is read.
pub(super) async fn limit(
    State((limits, hub)): State<(Limits, Hub)>,
    ConnectInfo(from): ConnectInfo<SocketAddr>,
    request: Request,
    next: Next,
) -> Response {
    let may = match request.uri().path() {
        EXCHANGE => limits.before(&hub, from.ip()),
        _ => limits.address(&hub, from.ip()),
    };
    match may {
        Ok(()) => next.run(request).await,
        Err(wait) => wait.into_response(),
    }
}
