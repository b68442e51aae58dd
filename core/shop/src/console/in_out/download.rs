//! Files that a browser keeps: under a name of ours, never shown as a page.

use std::path::Path;

use axum::body::Body;
use axum::http::{HeaderValue, header};
use axum::response::{IntoResponse, Response};
use chrono::NaiveDate;
use tokio_util::io::ReaderStream;

use crate::archive::file_name;
use crate::console::refused::Refused;

/// What a file is called: the parts hold nothing but letters, digits, `-` and `_`, whatever a door number holds.
pub(super) fn called(parts: &[&str], day: NaiveDate, ending: &str) -> String {
    let parts: Vec<String> = parts.iter().map(|part| file_name(part)).collect();
    format!("sumpbook-{}-{day}.{ending}", parts.join("-"))
}

/// Bytes as a file.
pub(super) fn bytes(name: &str, kind: &'static str, bytes: Vec<u8>) -> Response {
    with_headers(name, kind, bytes.into_response())
}

/// A file of the disk, sent piece by piece. It may be deleted once this returns.
pub(super) async fn file(name: &str, kind: &'static str, path: &Path) -> Result<Response, Refused> {
    let unread = |error: std::io::Error| Refused::Broken(error.to_string());
    let file = tokio::fs::File::open(path).await.map_err(unread)?;
    let length = file.metadata().await.map_err(unread)?.len();
    let mut response = Body::from_stream(ReaderStream::new(file)).into_response();
    response.headers_mut().insert(header::CONTENT_LENGTH, HeaderValue::from(length));
    Ok(with_headers(name, kind, response))
}

fn with_headers(name: &str, kind: &'static str, mut response: Response) -> Response {
    let headers = response.headers_mut();
    headers.insert(header::CONTENT_TYPE, HeaderValue::from_static(kind));
    // The name is plain: see `called`. Anything else would be no header's value, and then it goes without one.
    let attached = HeaderValue::from_str(&format!("attachment; filename=\"{name}\""));
    headers.insert(header::CONTENT_DISPOSITION, attached.unwrap_or(HeaderValue::from_static("attachment")));
    response
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_plain_whatever_a_unit_is_called() {
        let day = NaiveDate::from_ymd_opt(2026, 10, 20).unwrap();
        let name = called(&["pack", "TH 01\"\r\nSet-Cookie: x/../y"], day, "zip");
        assert_eq!(name, "sumpbook-pack-TH_01___Set-Cookie__x____y-2026-10-20.zip");
        let response = bytes(&name, "application/zip", Vec::new());
        let header = response.headers()[header::CONTENT_DISPOSITION].to_str().unwrap();
        assert_eq!(header, format!("attachment; filename=\"{name}\""));
    }
}
