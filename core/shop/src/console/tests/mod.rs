//! Pages of the console, asked and answered as a browser would: through the gate, with forms.

mod aside;
mod campaigns;
mod crew;
mod due;
mod in_out;
mod labels;
mod lay_up;
mod links;
mod paper;
mod people;
mod sign_in;
mod sounds;
mod status;
mod steps;
mod stock;
mod week;

use axum::body::{Body, to_bytes};
use axum::http::{Request, StatusCode, header};
use tower::ServiceExt;

use super::session::{Role, Users};
use super::{Console, router};
use crate::hub::{Hub, HubClock};
use crate::tests::yard::{Yard, at};

const HOST: &str = "hub.test:8443";

/// A browser with someone signed in.
pub(super) struct Desk {
    pub(super) hub: Hub,
    router: axum::Router,
    cookie: String,
    csrf: String,
    _folder: tempfile::TempDir,
}

/// What was answered.
pub(super) struct Answer {
    pub(super) status: StatusCode,
    /// Where it sends on to.
    pub(super) to: String,
    pub(super) text: String,
}

impl Answer {
    pub(super) fn json(&self) -> serde_json::Value {
        serde_json::from_str(&self.text).unwrap_or_else(|e| panic!("{e}: {}", self.text))
    }

    /// Holds that it says this.
    #[track_caller]
    pub(super) fn says(&self, what: &str) -> &Answer {
        assert!(self.text.contains(what), "'{what}' is not in: {}", self.text);
        self
    }

    #[track_caller]
    pub(super) fn says_not(&self, what: &str) -> &Answer {
        assert!(!self.text.contains(what), "'{what}' is in: {}", self.text);
        self
    }
}

impl Desk {
    /// Ilse Marrow at the desk of this yard, at this moment.
    pub(super) async fn of(yard: Yard, now: &str) -> Desk {
        Desk::with(yard, now, "Ilse Marrow", Role::Shop).await
    }

    pub(super) async fn with(yard: Yard, now: &str, name: &str, role: Role) -> Desk {
        let Yard { mut shop, folder, .. } = yard;
        shop.ledger.settle().unwrap();
        let users = Users::of(folder.path());
        users.set("Ilse Marrow", Role::Shop, "three words here").unwrap();
        users.set(name, role, "three words here").unwrap();
        let hub = Hub::over(shop, HubClock::beginning_at(at(now))).unwrap();
        let router = router(Console::of(hub.clone()));
        let mut desk = Desk { hub, router, cookie: String::new(), csrf: String::new(), _folder: folder };
        desk.sign_in(name).await;
        desk
    }

    /// The hub ends and is started again over the same folder, as a service is; the browser keeps what it has.
    pub(super) fn started_again(self, now: &str) -> Desk {
        let Desk { hub, cookie, csrf, _folder, .. } = self;
        hub.stop();
        drop(hub);
        let shop = crate::Shop::open(_folder.path()).unwrap();
        let hub = Hub::over(shop, HubClock::beginning_at(at(now))).unwrap();
        let router = router(Console::of(hub.clone()));
        Desk { hub, router, cookie, csrf, _folder }
    }

    /// Where the shop lives.
    pub(super) fn folder(&self) -> &std::path::Path {
        self._folder.path()
    }

    async fn sign_in(&mut self, name: &str) {
        let form = encoded(&[("name", name), ("password", "three words here")]);
        let request = Request::post("/sign-in")
            .header(header::HOST, HOST)
            .header(header::ORIGIN, format!("https://{HOST}"))
            .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
            .body(Body::from(form))
            .unwrap();
        let response = self.router.clone().oneshot(request).await.unwrap();
        let cookie = response.headers().get(header::SET_COOKIE).unwrap().to_str().unwrap();
        self.cookie = cookie.split(';').next().unwrap().to_owned();
        let page = self.get("/").await;
        let token = page.text.split("name=\"csrf\" value=\"").nth(1).unwrap();
        self.csrf = token.split('"').next().unwrap().to_owned();
    }

    async fn asked(&self, request: Request<Body>) -> Answer {
        let response = self.router.clone().oneshot(request).await.unwrap();
        let status = response.status();
        let to = response.headers().get(header::LOCATION).map(|to| to.to_str().unwrap().to_owned());
        let body = to_bytes(response.into_body(), 64 * 1024 * 1024).await.unwrap();
        let text = String::from_utf8_lossy(&body).into_owned();
        Answer { status, to: to.unwrap_or_default(), text }
    }

    pub(super) async fn get(&self, path: &str) -> Answer {
        self.get_in(path, "en").await
    }

    pub(super) async fn get_in(&self, path: &str, language: &str) -> Answer {
        let cookie = format!("{}; language={language}", self.cookie);
        let request = Request::get(path).header(header::HOST, HOST).header(header::COOKIE, cookie);
        self.asked(request.body(Body::empty()).unwrap()).await
    }

    pub(super) async fn post(&self, path: &str, fields: &[(&str, &str)]) -> Answer {
        let form = format!("csrf={}&{}", self.csrf, encoded(fields));
        self.post_raw(path, "application/x-www-form-urlencoded", form.into_bytes()).await
    }

    /// The same from a form that stands on this page.
    pub(super) async fn post_from(&self, page: &str, path: &str, fields: &[(&str, &str)]) -> Answer {
        let form = format!("csrf={}&{}", self.csrf, encoded(fields));
        let request = self.posting(path, "application/x-www-form-urlencoded");
        let request = request.header(header::REFERER, format!("https://{HOST}{page}"));
        self.asked(request.body(Body::from(form)).unwrap()).await
    }

    /// A form with a file.
    pub(super) async fn post_file(&self, path: &str, fields: &[(&str, &str)], file: (&str, &[u8])) -> Answer {
        let mut body = Vec::new();
        let token = ("csrf", self.csrf.as_str());
        for (name, value) in [token].iter().chain(fields) {
            body.extend(
                format!("--b\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n").bytes(),
            );
        }
        let head = format!(
            "--b\r\nContent-Disposition: form-data; name=\"{}\"; filename=\"page.jpg\"\r\nContent-Type: image/jpeg\r\n\r\n",
            file.0
        );
        body.extend(head.bytes());
        body.extend(file.1);
        body.extend(b"\r\n--b--\r\n");
        self.post_raw(path, "multipart/form-data; boundary=b", body).await
    }

    async fn post_raw(&self, path: &str, kind: &str, body: Vec<u8>) -> Answer {
        self.asked(self.posting(path, kind).body(Body::from(body)).unwrap()).await
    }

    fn posting(&self, path: &str, kind: &str) -> axum::http::request::Builder {
        Request::post(path)
            .header(header::HOST, HOST)
            .header(header::ORIGIN, format!("https://{HOST}"))
            .header(header::COOKIE, format!("{}; language=en", self.cookie))
            .header(header::CONTENT_TYPE, kind)
    }
}

fn encoded(fields: &[(&str, &str)]) -> String {
    let escaped = |text: &str| super::language::escaped(text);
    fields.iter().map(|(name, value)| format!("{name}={}", escaped(value))).collect::<Vec<_>>().join("&")
}

/// Holds that a page says the same in both languages: no key is shown for want of a text.
#[track_caller]
pub(super) fn no_key_shows(answer: &Answer) {
    let at = answer.text.find("&lt;");
    assert!(at.is_none(), "a text is missing: {}", &answer.text[at.unwrap_or(0)..][..80]);
}
