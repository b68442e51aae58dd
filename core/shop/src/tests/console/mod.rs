//! The console as a browser meets it: the router itself, over a real shop's folder.

mod arithmetic;
mod certificates;
mod day;
mod moved_sets;
mod note;
mod numbers;
mod people;
mod programme;
mod reminders;
mod severities;
mod slips;
mod unit;
mod units;
mod walks;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{Request, StatusCode, header};
use tower::ServiceExt;

use super::yard::{Yard, at};
use crate::Shop;
use crate::console::session::{Role, Users};
use crate::console::{Console, router};
use crate::hub::{Hub, HubClock};

const HOST: &str = "hub.yard:8443";
const PASSWORD: &str = "three plain words";

/// Someone who is signed in.
pub(super) struct Browser {
    router: Router,
    cookie: String,
    /// What every form carries.
    csrf: String,
    language: &'static str,
    _folder: tempfile::TempDir,
}

/// What came back.
pub(super) struct Page {
    pub(super) status: StatusCode,
    pub(super) to: Option<String>,
    pub(super) body: String,
}

impl Page {
    /// As JSON.
    pub(super) fn json(&self) -> serde_json::Value {
        serde_json::from_str(&self.body).unwrap_or_else(|error| panic!("{error}: {}", self.body))
    }

    /// Only its words, one blank between them.
    pub(super) fn words(&self) -> String {
        let (mut words, mut inside) = (String::new(), true);
        for c in self.body.chars() {
            match c {
                '<' => inside = false,
                '>' => {
                    inside = true;
                    words.push(' ');
                }
                c if inside => words.push(c),
                _ => {}
            }
        }
        words.replace("&quot;", "\"").replace("&gt;", ">").split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// A page whose every text is there.
    pub(super) fn whole(self) -> Page {
        assert_eq!(self.status, StatusCode::OK, "{}", self.body);
        // A text that is missing stands there as its key in angle brackets.
        let missing = self.body.split("&lt;").nth(1).map(|rest| rest.split("&gt;").next());
        assert_eq!(missing, None, "a text is missing");
        self
    }
}

impl Browser {
    /// Ilse Marrow, with the shop role.
    pub(super) async fn of(yard: Yard, now: &str) -> Browser {
        let (shop, folder) = yard.into_shop();
        Browser::over(shop, folder, now, Role::Shop).await
    }

    pub(super) async fn over(shop: Shop, folder: tempfile::TempDir, now: &str, role: Role) -> Browser {
        Users::of(&shop.folder).set("Ilse Marrow", role, PASSWORD).unwrap();
        let hub = Hub::over(shop, HubClock::beginning_at(at(now))).unwrap();
        let router = router(Console::of(hub));
        let form = format!("name=Ilse+Marrow&password={}", PASSWORD.replace(' ', "+"));
        let answer = router.clone().oneshot(request("POST", "/sign-in", "en", "", form)).await.unwrap();
        assert_eq!(answer.status(), StatusCode::SEE_OTHER);
        let kept = answer.headers().get(header::SET_COOKIE).unwrap().to_str().unwrap();
        let cookie = kept.split(';').next().unwrap().to_owned();
        let mut browser = Browser { router, cookie, csrf: String::new(), language: "en", _folder: folder };
        let page = browser.get("/").await;
        let csrf = page.body.split("name=\"csrf\" value=\"").nth(1).unwrap();
        browser.csrf = csrf.split('"').next().unwrap().to_owned();
        browser
    }

    pub(super) fn speaks(mut self, language: &'static str) -> Browser {
        self.language = language;
        self
    }

    pub(super) async fn get(&self, path: &str) -> Page {
        self.ask(request("GET", path, self.language, &self.cookie, String::new())).await
    }

    /// A form of this session.
    pub(super) async fn post(&self, path: &str, form: &str) -> Page {
        self.post_bare(path, &format!("csrf={}&{form}", self.csrf)).await
    }

    /// A form without what a page gives it.
    pub(super) async fn post_bare(&self, path: &str, form: &str) -> Page {
        self.ask(request("POST", path, self.language, &self.cookie, form.to_owned())).await
    }

    async fn ask(&self, request: Request<Body>) -> Page {
        let answer = self.router.clone().oneshot(request).await.unwrap();
        let status = answer.status();
        let to = answer.headers().get(header::LOCATION).map(|to| to.to_str().unwrap().to_owned());
        let bytes = to_bytes(answer.into_body(), usize::MAX).await.unwrap();
        Page { status, to, body: String::from_utf8(bytes.to_vec()).unwrap() }
    }
}

fn request(method: &str, path: &str, language: &str, cookie: &str, form: String) -> Request<Body> {
    Request::builder()
        .method(method)
        .uri(path)
        .header(header::HOST, HOST)
        .header(header::ORIGIN, format!("https://{HOST}"))
        .header(header::ACCEPT_LANGUAGE, language)
        .header(header::COOKIE, cookie)
        .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
        .body(Body::from(form))
        .unwrap()
}
