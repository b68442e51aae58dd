//! What every answer carries: headers that keep a page a page.

use axum::extract::Request;
use axum::http::{HeaderMap, HeaderName, HeaderValue, header};
use axum::middleware::Next;
use axum::response::Response;

/// The address ended in `.json`.
#[derive(Clone, Copy, Debug)]
pub(super) struct AskedAsJson;

/// Whether a request wants the record rather than the page.
pub(super) fn wants_json(headers: &HeaderMap, extensions: &axum::http::Extensions) -> bool {
    let accepts = headers.get(header::ACCEPT).and_then(|value| value.to_str().ok()).unwrap_or_default();
    extensions.get::<AskedAsJson>().is_some() || accepts.trim_start().starts_with("application/json")
}

/// Nothing from elsewhere, nothing inline, nowhere framed. No HSTS: the hub's certificate is its own, and a
/// browser that once heard it would never again let its owner pass.
const HEADERS: [(HeaderName, &str); 7] = [
    (
        header::CONTENT_SECURITY_POLICY,
        "default-src 'none'; style-src 'self'; font-src 'self'; img-src 'self'; media-src 'self'; \
         script-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
    ),
    (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (header::X_FRAME_OPTIONS, "DENY"),
    // Not `no-referrer`: browsers would then send `Origin: null` with our own forms.
    (header::REFERRER_POLICY, "same-origin"),
    (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
    (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
    (HeaderName::from_static("permissions-policy"), "camera=(), microphone=(), geolocation=()"),
];

/// Sets them. Pages are not kept by anything on the way; assets say themselves how long they are.
pub(super) async fn guarded(request: Request, next: Next) -> Response {
    let mut response = next.run(request).await;
    let headers = response.headers_mut();
    for (name, value) in HEADERS {
        headers.insert(name, HeaderValue::from_static(value));
    }
    headers.entry(header::CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    response
}
