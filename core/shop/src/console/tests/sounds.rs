//! The sound of a defect: heard where its photo is seen, and given in parts to browsers that ask for them.

use axum::body::{Body, to_bytes};
use axum::http::{Request, StatusCode, header};
use sumpbook_daybook::photo::PhotoFolder;
use sumpbook_daybook::sound;
use sumpbook_trade::checklist::Severity;
use tower::ServiceExt;

use super::{Desk, HOST, no_key_shows};
use crate::tests::yard::{Yard, answer, noise, walk};

const NOW: &str = "2026-10-20T17:00:00-06:00";

impl Desk {
    async fn played(&self, path: &str, range: Option<&str>) -> (StatusCode, header::HeaderMap, Vec<u8>) {
        let mut request =
            Request::get(path).header(header::HOST, HOST).header(header::COOKIE, self.cookie.clone());
        if let Some(range) = range {
            request = request.header(header::RANGE, range);
        }
        let response = self.router.clone().oneshot(request.body(Body::empty()).unwrap()).await.unwrap();
        let (head, body) = response.into_parts();
        (head.status, head.headers, to_bytes(body, 1024 * 1024).await.unwrap().to_vec())
    }
}

#[tokio::test]
async fn a_defects_sound_is_heard_at_the_desk_by_whoever_is_signed_in() {
    let mut yard = Yard::new();
    let bytes = sound::cleaned(&noise(2)).unwrap();
    let kept = PhotoFolder::of(&yard.shop.folder).keep(&bytes).unwrap();
    let mut belt = answer("belt-drive", None, Some(Severity::Air), "frayed");
    belt.sound = Some(kept);
    yard.sign(1, "Carmelo", "TH-03", "2026-10-20T06:35:00-06:00", walk(vec![belt], 7));
    yard.exchange(1, "2026-10-20T07:00:00-06:00");
    let desk = Desk::of(yard, NOW).await;
    let to = format!("/sound/{kept}");
    for page in ["/", "/units/TH-03"] {
        desk.get(page).await.says(&format!("<a href=\"{to}\">sound</a>"));
        desk.get_in(page, "es").await.says(&format!("<a href=\"{to}\">sonido</a>"));
    }
    let certify = desk.get("/certificates?unit=TH-03&item=belt-drive").await;
    certify.says(&format!("<audio controls preload=\"none\" src=\"{to}\""));
    certify.says("Sound of the defect").says("Open it by itself");
    let spanish = desk.get_in("/certificates?unit=TH-03&item=belt-drive", "es").await;
    spanish.says("Sonido del defecto");
    no_key_shows(&spanish);
    let sheet = desk.get("/day/2026-10-20.json").await.json();
    assert!(sheet.to_string().contains(&format!("\"sounds\":[\"{kept}\"]")), "{sheet}");

    let (status, headers, body) = desk.played(&to, None).await;
    assert_eq!((status, body == bytes), (StatusCode::OK, true));
    assert_eq!(headers[header::CONTENT_TYPE], "audio/wav");
    assert_eq!(headers[header::X_CONTENT_TYPE_OPTIONS], "nosniff");
    assert!(headers[header::CONTENT_SECURITY_POLICY].to_str().unwrap().contains("media-src 'self'"));
    let (status, headers, body) = desk.played(&to, Some("bytes=4-11")).await;
    assert_eq!((status, &body[..]), (StatusCode::PARTIAL_CONTENT, &bytes[4..12]));
    assert_eq!(headers[header::CONTENT_RANGE], format!("bytes 4-11/{}", bytes.len()).as_str());
    // What is no sound is not played, whoever put it there; nor what is not there.
    let photos = PhotoFolder::of(desk.folder());
    let other = photos.keep(b"<script>").unwrap();
    assert_eq!(desk.played(&format!("/sound/{other}"), None).await.0, StatusCode::NOT_FOUND);
    assert_eq!(desk.played(&format!("/photo/{kept}"), None).await.0, StatusCode::NOT_FOUND);
    assert_eq!(desk.played("/sound/00", None).await.0, StatusCode::NOT_FOUND);
    let nobody = Request::get(&to).header(header::HOST, HOST).body(Body::empty()).unwrap();
    let nobody = desk.router.clone().oneshot(nobody).await.unwrap();
    assert_ne!(nobody.status(), StatusCode::OK);
}
