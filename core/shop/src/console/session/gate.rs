//! The gate before every page: a session to read, and to write a role, the page's own origin and the
//! session's token.

use axum::body::{Body, Bytes, to_bytes};
use axum::extract::{Request, State};
use axum::http::{HeaderMap, Method, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use super::Role;
use crate::console::Console;
use crate::console::refused::Refused;

/// A form holds at most so much: a page of paper with its photo.
const MOST: usize = 16 * 1024 * 1024;

/// Pages that need no session.
fn open_to_all(path: &str) -> bool {
    matches!(path, "/sign-in" | "/words") || path.starts_with("/assets/")
}

/// Lets pass who may; answers everybody else.
pub(in crate::console) async fn gate(
    State(console): State<Console>,
    mut request: Request,
    next: Next,
) -> Response {
    let path = request.uri().path();
    if open_to_all(path) {
        return next.run(request).await;
    }
    let Some(open) = console.doors().who(request.headers(), console.hub().now()) else {
        return Refused::SignIn { to: to(&request) }.into_response();
    };
    let leaves = path == "/sign-out";
    if !matches!(*request.method(), Method::GET | Method::HEAD) {
        if open.role != Role::Shop && !leaves {
            return Refused::Reader.into_response();
        }
        if !same_origin(request.headers()) {
            return Refused::Forged.into_response();
        }
        let (parts, body) = request.into_parts();
        let Ok(body) = to_bytes(body, MOST).await else {
            return Refused::TooLarge.into_response();
        };
        if !carries(&parts.headers, &body, &open.csrf) {
            return Refused::Forged.into_response();
        }
        request = Request::from_parts(parts, Body::from(body));
    }
    request.extensions_mut().insert(open);
    next.run(request).await
}

/// Where to go on after signing in: only what can be read again.
fn to(request: &Request) -> Option<String> {
    let asked = request.uri().path_and_query().map(ToString::to_string);
    asked.filter(|_| matches!(*request.method(), Method::GET | Method::HEAD))
}

/// Whether a form was sent from a page of this console. Browsers say so on every POST; who says nothing is no
/// browser and holds no cookie by accident, yet is refused as well.
pub(in crate::console) fn same_origin(headers: &HeaderMap) -> bool {
    let text = |name| headers.get(name).and_then(|value| value.to_str().ok());
    match (text(header::ORIGIN), text(header::HOST)) {
        (Some(origin), Some(host)) => origin.strip_prefix("https://") == Some(host),
        (None, Some(_)) => {
            headers.get("sec-fetch-site").and_then(|value| value.to_str().ok()) == Some("same-origin")
        }
        _ => false,
    }
}

/// Whether the body carries the session's token: as a field of the form, or of a form with files.
fn carries(headers: &HeaderMap, body: &Bytes, csrf: &str) -> bool {
    let kind = headers.get(header::CONTENT_TYPE).and_then(|value| value.to_str().ok()).unwrap_or_default();
    if kind.starts_with("application/x-www-form-urlencoded") {
        let field = format!("csrf={csrf}");
        return body.split(|byte| *byte == b'&').any(|pair| pair == field.as_bytes());
    }
    if kind.starts_with("multipart/form-data") {
        let field = format!("name=\"csrf\"\r\n\r\n{csrf}\r\n");
        return body.windows(field.len()).any(|part| part == field.as_bytes());
    }
    headers.get("x-csrf").and_then(|value| value.to_str().ok()) == Some(csrf)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn headers(pairs: &[(&'static str, &str)]) -> HeaderMap {
        pairs.iter().map(|(name, value)| (name.parse().unwrap(), value.parse().unwrap())).collect()
    }

    #[test]
    fn a_form_comes_from_this_console_or_not_at_all() {
        let host = ("host", "hub.yard:8443");
        assert!(same_origin(&headers(&[host, ("origin", "https://hub.yard:8443")])));
        assert!(same_origin(&headers(&[host, ("sec-fetch-site", "same-origin")])));
        for other in ["https://hub.yard", "http://hub.yard:8443", "null", "https://other.yard:8443"] {
            assert!(!same_origin(&headers(&[host, ("origin", other)])), "{other}");
        }
        assert!(!same_origin(&headers(&[host, ("sec-fetch-site", "cross-site")])));
        assert!(!same_origin(&headers(&[host])));
        assert!(!same_origin(&headers(&[("origin", "https://hub.yard:8443")])));
    }

    #[test]
    fn the_token_is_a_field_of_the_form() {
        let form = headers(&[("content-type", "application/x-www-form-urlencoded")]);
        assert!(carries(&form, &Bytes::from("why=x&csrf=abc"), "abc"));
        assert!(!carries(&form, &Bytes::from("why=csrf=abc"), "abc"));
        assert!(!carries(&form, &Bytes::from("csrf=abcd"), "abc"));
        let files = headers(&[("content-type", "multipart/form-data; boundary=b")]);
        let body = "--b\r\nContent-Disposition: form-data; name=\"csrf\"\r\n\r\nabc\r\n--b--\r\n";
        assert!(carries(&files, &Bytes::from(body), "abc"));
        assert!(!carries(&files, &Bytes::from(body), "abd"));
        assert!(carries(&headers(&[("x-csrf", "abc")]), &Bytes::new(), "abc"));
        assert!(!carries(&headers(&[]), &Bytes::new(), "abc"));
    }
}
