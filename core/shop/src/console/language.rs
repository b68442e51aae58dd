//! Language and units of the console: chosen on every page, kept in a cookie, first guessed from what the
//! browser says it reads.

use axum::extract::FromRequestParts;
use axum::http::request::Parts;
use axum::http::{HeaderMap, HeaderValue, Method, Uri, header};
use axum::response::{IntoResponse, Redirect, Response};
use serde::{Deserialize, Serialize};
use sumpbook_daybook::text::Arg;

use super::query::Query;
use super::session::cookie;
use super::texts;

/// A language of the console.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum Language {
    /// English.
    #[default]
    En,
    /// Spanish.
    Es,
}

impl Language {
    pub(super) const ALL: [Language; 2] = [Language::En, Language::Es];

    /// As HTML and cookies name it.
    pub(super) fn tag(self) -> &'static str {
        match self {
            Language::En => "en",
            Language::Es => "es",
        }
    }

    /// A text of the console, or of the screens, by its key.
    pub(super) fn say(self, key: &str, args: &[(&str, Arg<'_>)]) -> String {
        texts::find(self, key, args).unwrap_or_else(|| format!("<{key}>"))
    }
}

/// Units figures are shown in. A record is never rewritten by it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum Measures {
    /// Quarts, psi, cfm.
    #[default]
    Us,
    /// Litres, kPa, cubic metres.
    Metric,
}

impl Measures {
    pub(super) fn tag(self) -> &'static str {
        match self {
            Measures::Us => "us",
            Measures::Metric => "metric",
        }
    }
}

/// What one reader chose.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Choice {
    pub(super) language: Language,
    pub(super) measures: Measures,
}

impl Choice {
    /// What the cookies say, else a guess.
    pub(super) fn of(headers: &HeaderMap) -> Choice {
        let guessed = guess(headers);
        let language = match cookie(headers, "language").as_deref() {
            Some("en") => Language::En,
            Some("es") => Language::Es,
            _ => guessed.language,
        };
        let measures = match cookie(headers, "units").as_deref() {
            Some("us") => Measures::Us,
            Some("metric") => Measures::Metric,
            _ => guessed.measures,
        };
        Choice { language, measures }
    }
}

impl<S: Sync> FromRequestParts<S> for Choice {
    type Rejection = std::convert::Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Choice, Self::Rejection> {
        Ok(Choice::of(&parts.headers))
    }
}

/// The best liked of our languages; metric where its region is named and is another than the US.
fn guess(headers: &HeaderMap) -> Choice {
    let said = headers.get(header::ACCEPT_LANGUAGE).and_then(|value| value.to_str().ok());
    let mut best: (f32, Choice) = (0.0, Choice::default());
    for part in said.unwrap_or_default().split(',').take(20) {
        let (tag, weight) = part.split_once(";q=").unwrap_or((part, "1"));
        let weight = weight.trim().parse::<f32>().unwrap_or(0.0);
        let tag = tag.trim().to_lowercase();
        let (name, region) = tag.split_once('-').unwrap_or((&tag, ""));
        let language = match name {
            "en" => Language::En,
            "es" => Language::Es,
            _ => continue,
        };
        let measures = if matches!(region, "" | "us" | "419") { Measures::Us } else { Measures::Metric };
        if weight > best.0 {
            best = (weight, Choice { language, measures });
        }
    }
    best.1
}

#[derive(Debug, Deserialize)]
pub(super) struct Chosen {
    language: Option<Language>,
    units: Option<Measures>,
    back: Option<String>,
}

/// `GET /words`: keeps a choice and goes back.
pub(super) async fn choose(Query(chosen): Query<Chosen>) -> Response {
    let back = chosen.back.filter(|back| is_local(back)).unwrap_or_else(|| "/".to_owned());
    let mut response = Redirect::to(&back).into_response();
    let mut keep = |name: &str, value: &str| {
        let cookie = format!("{name}={value}; Path=/; Max-Age=31536000; Secure; HttpOnly; SameSite=Lax");
        if let Ok(value) = HeaderValue::from_str(&cookie) {
            response.headers_mut().append(header::SET_COOKIE, value);
        }
    };
    if let Some(language) = chosen.language {
        keep("language", language.tag());
    }
    if let Some(units) = chosen.units {
        keep("units", units.tag());
    }
    response
}

/// The address to come back to from another: this page's own, or of an answer to a form, which cannot be asked for
/// again, the page that the form stood on.
pub(super) fn back(method: &Method, uri: &Uri, headers: &HeaderMap) -> String {
    let of = |uri: &Uri| uri.path_and_query().map_or_else(|| "/".to_owned(), ToString::to_string);
    if matches!(*method, Method::GET | Method::HEAD) {
        return of(uri);
    }
    let text = |name| headers.get(name).and_then(|value| value.to_str().ok());
    let stood_on = text(header::REFERER).and_then(|from| from.parse::<Uri>().ok());
    let ours = stood_on.filter(|from| {
        from.scheme_str() == Some("https") && from.authority().map(|at| at.as_str()) == text(header::HOST)
    });
    ours.map(|from| of(&from)).filter(|back| is_local(back)).unwrap_or_else(|| "/".to_owned())
}

/// Whether an address stays on this console: no other host, nothing a browser would read as one.
pub(super) fn is_local(to: &str) -> bool {
    let mut bytes = to.bytes();
    bytes.next() == Some(b'/')
        && !matches!(bytes.next(), Some(b'/' | b'\\'))
        && to.bytes().all(|byte| byte.is_ascii_graphic() && byte != b'\\')
}

/// A text as part of an address.
pub(super) fn escaped(text: &str) -> String {
    text.bytes()
        .map(|byte| match byte {
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'-' | b'.' | b'_' | b'~' | b'/' => {
                char::from(byte).to_string()
            }
            other => format!("%{other:02X}"),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn guessed(said: &str) -> Choice {
        let headers = [(header::ACCEPT_LANGUAGE, HeaderValue::from_str(said).unwrap())];
        Choice::of(&headers.into_iter().collect())
    }

    #[test]
    fn the_browser_is_asked_first() {
        assert_eq!(guessed("es-US,es;q=0.9,en;q=0.8").language, Language::Es);
        assert_eq!(guessed("de,en;q=0.7,es;q=0.9").language, Language::Es);
        assert_eq!(guessed("de"), Choice::default());
        assert_eq!(guessed("es-US").measures, Measures::Us);
        assert_eq!(guessed("en-CA").measures, Measures::Metric);
    }

    #[test]
    fn a_choice_stands_over_the_guess() {
        let headers = [
            (header::ACCEPT_LANGUAGE, HeaderValue::from_static("es-MX")),
            (header::COOKIE, HeaderValue::from_static("language=en; units=us")),
        ];
        assert_eq!(Choice::of(&headers.into_iter().collect()), Choice::default());
    }

    #[test]
    fn from_the_answer_to_a_form_one_comes_back_to_where_it_stood() {
        let from = |referer: &'static str| {
            let host = (header::HOST, HeaderValue::from_static("hub.yard:8443"));
            let headers = [host, (header::REFERER, HeaderValue::from_static(referer))];
            let uri = Uri::from_static("/due/plan");
            back(&Method::POST, &uri, &headers.into_iter().collect())
        };
        assert_eq!(from("https://hub.yard:8443/due?unit=TH-01"), "/due?unit=TH-01");
        for other in
            ["https://other.yard/due", "http://hub.yard:8443/due", "/due", "https://hub.yard:8443//x"]
        {
            assert_eq!(from(other), "/", "{other}");
        }
        let page = Uri::from_static("/due?unit=TH-01");
        assert_eq!(back(&Method::GET, &page, &HeaderMap::new()), "/due?unit=TH-01");
    }

    #[test]
    fn nobody_is_sent_elsewhere() {
        for to in ["/", "/day/2026-10-20?view=morning"] {
            assert!(is_local(to), "{to}");
        }
        for to in ["", "//other", "/\\other", "https://other", "day", "/a\r\nSet-Cookie: x", "/a b"] {
            assert!(!is_local(to), "{to:?}");
        }
        assert_eq!(escaped("/day/1?a=b c"), "/day/1%3Fa%3Db%20c");
    }
}
