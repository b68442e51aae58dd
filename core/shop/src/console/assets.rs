//! What pages are drawn with: the style, the one script, the letters. Built in, and named by what they hold,
//! so that a browser keeps each for a year and never shows an old one.

use std::sync::OnceLock;

use axum::extract::Path;
use axum::http::header;
use axum::response::{IntoResponse, Response};
use sha2::{Digest, Sha256};

use super::refused::Refused;

const CSS: &str = "text/css; charset=utf-8";
const FONT: &str = "font/woff2";

/// Name, kind, bytes.
const ASSETS: [(&str, &str, &[u8]); 11] = [
    ("console.css", CSS, include_bytes!("../../face/console.css")),
    ("chart.css", CSS, include_bytes!("../../face/chart.css")),
    ("print.css", CSS, include_bytes!("../../face/print.css")),
    ("board.css", CSS, include_bytes!("../../face/board.css")),
    ("console.js", "text/javascript; charset=utf-8", include_bytes!("../../face/console.js")),
    ("mark.svg", "image/svg+xml", include_bytes!("../../face/mark.svg")),
    ("atkinson-400.woff2", FONT, include_bytes!("../../face/atkinson-400.woff2")),
    ("atkinson-600.woff2", FONT, include_bytes!("../../face/atkinson-600.woff2")),
    ("atkinson-700.woff2", FONT, include_bytes!("../../face/atkinson-700.woff2")),
    ("atkinson-800.woff2", FONT, include_bytes!("../../face/atkinson-800.woff2")),
    ("OFL.txt", "text/plain; charset=utf-8", include_bytes!("../../face/OFL.txt")),
];

/// Names all of them together.
fn tag() -> &'static str {
    static TAG: OnceLock<String> = OnceLock::new();
    TAG.get_or_init(|| {
        let mut all = Sha256::new();
        for (name, _, bytes) in ASSETS {
            all.update(name.as_bytes());
            all.update(bytes);
        }
        all.finalize().iter().take(6).map(|byte| format!("{byte:02x}")).collect()
    })
}

/// Where an asset is.
pub(super) fn href(name: &str) -> String {
    format!("/assets/{}/{name}", tag())
}

/// `GET /assets/...`
pub(super) async fn asset(Path((asked, name)): Path<(String, String)>) -> Response {
    let Some((_, kind, bytes)) = ASSETS.iter().find(|(known, ..)| *known == name) else {
        return Refused::NotThere.into_response();
    };
    // A page of another version of the program may ask for its own: it gets ours, for this once.
    let keep = if asked == tag() { "public, max-age=31536000, immutable" } else { "no-cache" };
    ([(header::CONTENT_TYPE, *kind), (header::CACHE_CONTROL, keep)], *bytes).into_response()
}
