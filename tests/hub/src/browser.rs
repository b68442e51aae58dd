//! A browser at the console, as far as a test needs one.

use std::sync::Arc;

use sumpbook_shop::console::session::{Role, Users};
use ureq::Agent;
use ureq::tls::{TlsConfig, TlsProvider};

use crate::Yard;

/// Name and password of the one who may sign in.
pub const WHO: (&str, &str) = ("person 1", "correct horse, wet sump");

/// What was answered.
#[derive(Debug)]
pub struct Shown {
    /// The status of HTTP.
    pub status: u16,
    /// Headers, name and value, in order.
    pub headers: Vec<(String, String)>,
    /// The body.
    pub body: Vec<u8>,
}

impl Shown {
    /// The first header of this name.
    pub fn header(&self, name: &str) -> Option<&str> {
        self.headers.iter().find(|(known, _)| known == name).map(|(_, value)| value.as_str())
    }
}

/// It follows no redirect and keeps its own cookie.
pub struct Browser {
    agent: Agent,
    base: String,
    cookie: Option<String>,
}

impl Browser {
    /// Of a yard whose hub stands. Who may sign in is set first.
    pub fn of(yard: &Yard) -> Browser {
        Users::of(yard.folder()).set(WHO.0, Role::Shop, WHO.1).unwrap();
        // What a browser's owner does when it warns of the hub's own certificate.
        let tls = TlsConfig::builder()
            .provider(TlsProvider::Rustls)
            .disable_verification(true)
            .unversioned_rustls_crypto_provider(Arc::new(rustls::crypto::ring::default_provider()))
            .build();
        let config = Agent::config_builder().tls_config(tls).http_status_as_error(false).max_redirects(0);
        Browser {
            agent: config.build().new_agent(),
            base: format!("https://{}", yard.address()),
            cookie: None,
        }
    }

    /// Asks for a page.
    pub fn get(&self, path: &str) -> Shown {
        let mut request = self.agent.get(format!("{}{path}", self.base));
        if let Some(cookie) = &self.cookie {
            request = request.header("cookie", cookie);
        }
        shown(request.call().unwrap())
    }

    /// Sends a form from a page of the console.
    pub fn post(&self, path: &str, form: &str) -> Shown {
        let mut request = self.agent.post(format!("{}{path}", self.base)).header("origin", &self.base);
        if let Some(cookie) = &self.cookie {
            request = request.header("cookie", cookie);
        }
        shown(request.content_type("application/x-www-form-urlencoded").send(form).unwrap())
    }

    /// Tries to sign in, and keeps the cookie when that goes well.
    pub fn sign_in(&mut self, name: &str, password: &str) -> Shown {
        let coded = |text: &str| -> String { text.bytes().map(|byte| format!("%{byte:02X}")).collect() };
        let shown = self.post("/sign-in", &format!("name={}&password={}", coded(name), coded(password)));
        if let Some(cookie) = shown.header("set-cookie").and_then(|cookie| cookie.split(';').next()) {
            self.cookie = Some(cookie.to_owned());
        }
        shown
    }

    /// Its cookie, for another program.
    pub fn cookie(&self) -> Option<&str> {
        self.cookie.as_deref()
    }
}

fn shown(response: ureq::http::Response<ureq::Body>) -> Shown {
    let status = response.status().as_u16();
    let text = |value: &ureq::http::HeaderValue| String::from_utf8_lossy(value.as_bytes()).into_owned();
    let headers = response.headers().iter().map(|(name, value)| (name.to_string(), text(value))).collect();
    let body = response.into_body().read_to_vec().unwrap();
    Shown { status, headers, body }
}
