//! Answers that are no page: what happened, what is kept, what to do, in the reader's language.

use axum::Json;
use axum::extract::{Request, State};
use axum::http::{HeaderValue, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Redirect, Response};
use sumpbook_daybook::text::Arg;

use super::language::Choice;
use super::no::No;
use super::{Console, answer, frame, language};
use crate::ShopError;
use crate::hub::HubError;

/// Why there is no page.
#[derive(Clone, Debug)]
pub(super) enum Refused {
    /// Nobody is signed in.
    SignIn {
        /// What was asked for.
        to: Option<String>,
    },
    /// A reader sees and does not write.
    Reader,
    /// The form does not come from this console, or its session ended.
    Forged,
    /// More than a form holds.
    TooLarge,
    /// No such page, or nothing of that name.
    NotThere,
    /// No unit has this door number.
    NoUnit(String),
    /// The address asks for something that cannot be read.
    Address,
    /// A form is sent to that address; nothing is read there.
    OnlyForms,
    /// The shop says no, in a sentence.
    Said(String),
    /// A form lacks something: the key of the sentence that says what.
    Asked(&'static str),
    /// The shop says no, in a sentence that waits for the reader's language.
    No(No),
    /// Try again: too many write, or the hub stops. Its sentence, and what the log is told.
    Busy(No, String),
    /// The books cannot be read or written.
    Broken(String),
}

impl From<HubError> for Refused {
    fn from(error: HubError) -> Refused {
        match (No::of_hub(&error), &error) {
            (Some(no), HubError::Shop(_)) => Refused::No(no),
            (Some(no), _) => Refused::Busy(no, error.to_string()),
            (None, _) => Refused::Broken(error.to_string()),
        }
    }
}

impl From<ShopError> for Refused {
    fn from(error: ShopError) -> Refused {
        HubError::from(error).into()
    }
}

impl Refused {
    fn status(&self) -> StatusCode {
        match self {
            Refused::SignIn { .. } => StatusCode::UNAUTHORIZED,
            Refused::Reader | Refused::Forged => StatusCode::FORBIDDEN,
            Refused::TooLarge => StatusCode::PAYLOAD_TOO_LARGE,
            Refused::NotThere | Refused::NoUnit(_) => StatusCode::NOT_FOUND,
            Refused::Address => StatusCode::BAD_REQUEST,
            Refused::OnlyForms => StatusCode::METHOD_NOT_ALLOWED,
            Refused::Said(_) | Refused::No(_) | Refused::Asked(_) => StatusCode::UNPROCESSABLE_ENTITY,
            Refused::Busy(..) | Refused::Broken(_) => StatusCode::SERVICE_UNAVAILABLE,
        }
    }

    /// Why, for the log.
    fn why(&self) -> &'static str {
        match self {
            Refused::SignIn { .. } => "nobody is signed in",
            Refused::Reader => "a reader writes",
            Refused::Forged => "not a form of this session",
            Refused::TooLarge => "more than a form holds",
            Refused::NotThere | Refused::NoUnit(_) => "nothing of that name",
            Refused::Address => "an address that does not read",
            Refused::OnlyForms => "a form's address was asked for",
            Refused::Said(_) | Refused::No(_) => "the shop says no",
            Refused::Asked(key) => key,
            Refused::Busy(..) | Refused::Broken(_) => "no page",
        }
    }

    /// Its sentence.
    pub(super) fn said(&self, choice: Choice) -> String {
        let key = match self {
            Refused::SignIn { .. } => "refused-sign-in",
            Refused::Reader => "refused-reader",
            Refused::Forged => "refused-forged",
            Refused::TooLarge => "refused-too-large",
            Refused::NotThere => "refused-not-there",
            Refused::Address => "address-unread",
            Refused::OnlyForms => "refused-only-forms",
            Refused::Broken(_) => "refused-broken",
            Refused::Asked(key) => key,
            Refused::NoUnit(door) => {
                return choice.language.say("refused-no-unit", &[("unit", Arg::Text(door))]);
            }
            Refused::No(no) | Refused::Busy(no, _) => return no.said(choice.language),
            Refused::Said(said) => return said.clone(),
        };
        choice.language.say(key, &[])
    }
}

/// Told later, by [`told`], who knows the reader's language.
impl IntoResponse for Refused {
    fn into_response(self) -> Response {
        let mut response = self.status().into_response();
        response.extensions_mut().insert(self);
        response
    }
}

/// No page of this address.
pub(super) async fn nothing_there() -> Refused {
    Refused::NotThere
}

/// An address that takes another method: typed in, or come back to, it is a form's.
pub(super) async fn only_forms() -> Refused {
    Refused::OnlyForms
}

/// Makes a page, or JSON, of what was refused further in.
pub(super) async fn told(State(_): State<Console>, request: Request, next: Next) -> Response {
    let choice = Choice::of(request.headers());
    let json = answer::wants_json(request.headers(), request.extensions());
    let back = language::back(request.method(), request.uri(), request.headers());
    let way = frame::page_of_form(request.uri().path());
    // Where the form stood: with nothing said of that, or on the day sheet, the way there is told anyway.
    let form = (request.method() == Method::POST && back != "/").then(|| back.clone());
    let response = next.run(request).await;
    let Some(refused) = response.extensions().get::<Refused>().cloned() else { return response };
    let status = refused.status();
    match &refused {
        Refused::Broken(why) | Refused::Busy(_, why) => tracing::error!(%why, "a page could not be made"),
        // Nobody's words and no address of a page: either may hold a name.
        other => tracing::info!(status = status.as_u16(), why = other.why(), "refused"),
    }
    let way = match &refused {
        Refused::OnlyForms => way.map(|way| (way, "go-to-form")),
        Refused::NoUnit(_) => Some(("/units".to_owned(), "go-to-units")),
        _ => None,
    };
    let said = refused.said(choice);
    let mut told = match (&refused, json) {
        (_, true) => (status, Json(serde_json::json!({ "error": said }))).into_response(),
        (Refused::SignIn { to }, false) => Redirect::to(&sign_in(to.as_deref())).into_response(),
        (_, false) => {
            let way = way.as_ref().map(|(way, key)| (way.as_str(), *key));
            let main = frame::sentence(choice, &said, form.as_deref(), way);
            (status, frame::bare(choice, "refused-title", &back, &main)).into_response()
        }
    };
    if status == StatusCode::SERVICE_UNAVAILABLE {
        told.headers_mut().insert(header::RETRY_AFTER, HeaderValue::from_static("5"));
    }
    told
}

fn sign_in(to: Option<&str>) -> String {
    match to.filter(|to| *to != "/") {
        Some(to) => format!("/sign-in?to={}", language::escaped(to)),
        None => "/sign-in".to_owned(),
    }
}
