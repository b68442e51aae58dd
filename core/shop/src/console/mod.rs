//! The console: the shop works from a browser.
//!
//! Pages are made here, with little script. Each is built from a view, a record that is also its JSON: at
//! the same address with `.json` or `Accept: application/json`. A page asks who is there before anything.

mod air;
mod answer;
mod aside;
mod asked_hours;
mod assets;
mod broken;
mod cab_report;
mod certificates;
mod chart;
mod crew;
mod day;
mod due;
mod due_words;
mod form;
mod frame;
mod in_out;
mod labels;
mod language;
mod mark;
mod no;
mod note_down;
mod numbers;
mod oil_use;
mod paper;
mod papers;
mod parts;
mod people;
mod photo;
mod place;
mod programme;
mod query;
mod refused;
mod rule_words;
mod ruler;
pub mod session;
mod severities;
mod sign_in;
mod sound;
mod stock;
mod table;
mod texts;
mod unit;
mod units;
mod visit;
mod volume;
mod waits;
mod words;

#[cfg(test)]
mod tests;

use std::sync::Arc;

use axum::Router;
use axum::extract::{DefaultBodyLimit, Request};
use axum::http::Uri;
use axum::middleware::{from_fn, from_fn_with_state};
use axum::routing::{get, post};

use crate::hub::Hub;
use session::Doors;

/// What every page stands on: the hub, and who may come in.
#[derive(Clone)]
pub struct Console(Arc<Inner>);

struct Inner {
    hub: Hub,
    doors: Doors,
    codes: people::Codes,
    looked: in_out::Desk,
}

impl Console {
    /// The console of a hub. Who may sign in stands in the shop's folder; who was in before the hub was started
    /// again still is.
    pub fn of(hub: Hub) -> Console {
        let open = hub.reader().and_then(|ledger| Ok(ledger.store().sessions(hub.now().unix_ms())?));
        if let Err(error) = &open {
            tracing::warn!(%error, "sessions of the console do not read: everybody signs in again");
        }
        let doors = Doors::of(hub.folder(), open.unwrap_or_default());
        Console(Arc::new(Inner {
            hub,
            doors,
            codes: people::Codes::default(),
            looked: in_out::Desk::default(),
        }))
    }

    fn hub(&self) -> &Hub {
        &self.0.hub
    }

    fn doors(&self) -> &Doors {
        &self.0.doors
    }

    /// Tables that were looked at and not brought in yet.
    fn looked(&self) -> &in_out::Desk {
        &self.0.looked
    }

    /// Codes that stand on somebody's screen.
    fn codes(&self) -> &people::Codes {
        &self.0.codes
    }
}

/// A text of the console in English, for the command line.
pub(crate) fn said_in_english(key: &str) -> String {
    language::Language::En.say(key, &[])
}

/// A text of the console in a language by its tag; English when it has another.
pub(crate) fn say_in(tag: &str, key: &str, args: &[(&str, sumpbook_daybook::text::Arg<'_>)]) -> String {
    spoken(tag).say(key, args)
}

/// A task's name, likewise; the plain word where a fleet has made one of its own.
pub(crate) fn task_in(tag: &str, task: &str) -> String {
    texts::find(spoken(tag), &format!("task-{task}"), &[]).unwrap_or_else(|| task.replace('-', " "))
}

/// A case of a gap as the page tells it, with the yard's days.
pub(crate) fn gap_case_in(tag: &str, zone: chrono_tz::Tz, day: chrono::NaiveDate, case: &str) -> String {
    let choice = language::Choice { language: spoken(tag), ..language::Choice::default() };
    in_out::gap_case::said(&words::Words { choice, zone, day }, case)
}

/// A rule's number as people read it.
pub(crate) fn number_text(value: u32, places: u32) -> String {
    numbers::text(value, places)
}

/// An item of the checklist and a word for what is found, likewise.
pub(crate) fn item_in(tag: &str, item: &str) -> String {
    let key = sumpbook_daybook::text::item_key(item);
    texts::find(spoken(tag), &key, &[]).unwrap_or_else(|| item.replace('-', " "))
}

pub(crate) fn word_in(tag: &str, word: &str) -> String {
    texts::find(spoken(tag), &sumpbook_daybook::text::word_key(word), &[])
        .unwrap_or_else(|| word.replace('-', " "))
}

fn spoken(tag: &str) -> language::Language {
    language::Language::ALL.into_iter().find(|language| language.tag() == tag).unwrap_or_default()
}

/// What must be said about a file before it can be brought in, in English.
pub(crate) fn asked_in_english(ask: &crate::table_in::Ask) -> String {
    in_out::asked(language::Language::En, ask)
}

/// Every page of the console, behind its door.
pub fn router(console: Console) -> Router {
    let pages = Router::new()
        .merge(day::routes())
        .merge(units::routes())
        .merge(unit::routes())
        .merge(note_down::routes())
        .merge(certificates::routes())
        .merge(photo::routes())
        .merge(sound::routes())
        .merge(due::routes())
        .merge(stock::routes())
        .merge(air::routes())
        .merge(numbers::routes())
        .merge(severities::routes())
        .merge(programme::routes())
        .merge(aside::routes())
        .merge(people::routes())
        .merge(crew::routes())
        .merge(paper::routes())
        .merge(cab_report::routes())
        .merge(labels::routes())
        .merge(in_out::routes())
        .route("/sign-in", get(sign_in::page).post(sign_in::enter))
        .route("/sign-out", post(sign_in::leave))
        .route("/words", get(language::choose))
        .route("/assets/{tag}/{name}", get(assets::asset))
        .fallback(refused::nothing_there)
        .method_not_allowed_fallback(refused::only_forms)
        .layer(from_fn_with_state(console.clone(), session::gate))
        .layer(DefaultBodyLimit::disable())
        .layer(from_fn_with_state(console.clone(), refused::told))
        .layer(from_fn(answer::guarded))
        .with_state(console);
    // Before an address is looked up: `.json` is a way of asking, not another page.
    let rewritten = tower::ServiceBuilder::new().map_request(as_json).service(pages);
    Router::new().fallback_service(rewritten)
}

/// `/units.json` asks for `/units` as JSON.
fn as_json<B>(mut request: Request<B>) -> Request<B> {
    let uri = request.uri();
    let Some(path) = uri.path().strip_suffix(".json").filter(|path| !path.starts_with("/assets/")) else {
        return request;
    };
    let path = if path.is_empty() { "/" } else { path };
    let asked = match uri.query() {
        Some(query) => format!("{path}?{query}"),
        None => path.to_owned(),
    };
    if let Ok(asked) = asked.parse::<Uri>() {
        *request.uri_mut() = asked;
        request.extensions_mut().insert(answer::AskedAsJson);
    }
    request
}
