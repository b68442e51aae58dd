//! Signing in and out.

use std::net::{IpAddr, SocketAddr};

use axum::Form;
use axum::extract::{ConnectInfo, FromRequestParts, State};
use axum::http::request::Parts;
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, html};
use serde::Deserialize;
use sumpbook_daybook::text::Arg;

use super::language::{Choice, escaped, is_local};
use super::refused::Refused;
use super::session::{self, COOKIE, MOST_SESSIONS, SESSION_HOURS, SignIn, same_origin};
use super::{Console, frame};
use crate::console::query::Query;
use crate::hub::HubError;

/// Where a request came from: one address, or the whole network of an IPv6 one, of which a caller has many.
pub(super) struct Caller(String);

impl<S: Sync> FromRequestParts<S> for Caller {
    type Rejection = std::convert::Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Caller, Self::Rejection> {
        let address = parts.extensions.get::<ConnectInfo<SocketAddr>>().map(|from| from.0.ip());
        Ok(Caller(match address.map(|address| address.to_canonical()) {
            Some(IpAddr::V6(address)) => {
                let [a, b, c, d, ..] = address.segments();
                format!("{a:x}:{b:x}:{c:x}:{d:x}::/64")
            }
            Some(IpAddr::V4(address)) => address.to_string(),
            None => "unknown".to_owned(),
        }))
    }
}

#[derive(Debug, Deserialize)]
pub(super) struct Asked {
    to: Option<String>,
}

#[derive(Debug, Deserialize)]
pub(super) struct Given {
    name: String,
    password: String,
    to: Option<String>,
}

/// `GET /sign-in`
pub(super) async fn page(
    State(console): State<Console>,
    choice: Choice,
    Query(asked): Query<Asked>,
    headers: HeaderMap,
) -> Result<Response, Refused> {
    if console.doors().who(&headers, console.hub().now()).is_some() {
        return Ok(Redirect::to(&onward(asked.to)).into_response());
    }
    Ok(shown(&console, choice, &headers, asked.to.as_deref(), None).await?.into_response())
}

/// `POST /sign-in`
pub(super) async fn enter(
    State(console): State<Console>,
    choice: Choice,
    caller: Caller,
    headers: HeaderMap,
    Form(given): Form<Given>,
) -> Result<Response, Refused> {
    if !same_origin(&headers) {
        return Err(Refused::Forged);
    }
    let now = console.hub().now();
    let answer = console.doors().sign_in(&given.name, given.password, &caller.0, now).await;
    let answer = answer.map_err(|error| Refused::Broken(error.to_string()))?;
    let (status, wait_s, why) = match answer {
        SignIn::In { token, row } => {
            // Whatever session the browser brought is over: the new one has a name nobody could know before.
            let ended = console.doors().end(&headers);
            let kept = console.hub().write(move |shop| {
                let store = shop.ledger.store_mut();
                ended.map_or(Ok(()), |hash| store.end_session(&hash))?;
                Ok(store.keep_session(&row, MOST_SESSIONS, now.unix_ms())?)
            });
            if let Err(error) = kept.await {
                // Whoever works at a full disk must come in to see so.
                tracing::warn!(%error, "a session is not kept: it ends with this run of the hub");
            }
            let mut response = Redirect::to(&onward(given.to)).into_response();
            keep(&mut response, &token, SESSION_HOURS.saturating_mul(3_600));
            return Ok(response);
        }
        SignIn::Wrong { wait_s } => (StatusCode::UNAUTHORIZED, wait_s, "sign-in-wrong"),
        // The right password is not called wrong: it was not looked at.
        SignIn::Wait { wait_s } => (StatusCode::TOO_MANY_REQUESTS, wait_s, "sign-in-wait"),
    };
    // Who was named is not written down: a password is easily typed in its place.
    tracing::warn!(status = status.as_u16(), address = %caller.0, wait_s, "a sign-in was refused");
    let wrong = choice.language.say(why, &[("seconds", Arg::Count(wait_s))]);
    let page = shown(&console, choice, &headers, given.to.as_deref(), Some((&wrong, &given.name))).await?;
    let mut response = (status, page).into_response();
    if status == StatusCode::TOO_MANY_REQUESTS {
        response.headers_mut().insert(header::RETRY_AFTER, HeaderValue::from(wait_s));
    }
    Ok(response)
}

/// `POST /sign-out`
pub(super) async fn leave(State(console): State<Console>, headers: HeaderMap) -> Result<Response, Refused> {
    if let Some(hash) = console.doors().end(&headers) {
        // Not kept as ended it would come back with the next start of the hub: then that is said.
        console.hub().write(move |shop| Ok(shop.ledger.store_mut().end_session(&hash)?)).await?;
    }
    let mut response = Redirect::to("/sign-in").into_response();
    keep(&mut response, "", 0);
    Ok(response)
}

fn onward(to: Option<String>) -> String {
    to.filter(|to| is_local(to)).unwrap_or_else(|| "/".to_owned())
}

fn keep(response: &mut Response, token: &str, seconds: i64) {
    let cookie = format!("{COOKIE}={token}; Path=/; Max-Age={seconds}; Secure; HttpOnly; SameSite=Strict");
    if let Ok(value) = HeaderValue::from_str(&cookie) {
        response.headers_mut().append(header::SET_COOKIE, value);
    }
}

/// `wrong`: why nobody was let in, and the name that was typed.
async fn shown(
    console: &Console,
    choice: Choice,
    headers: &HeaderMap,
    to: Option<&str>,
    wrong: Option<(&str, &str)>,
) -> Result<Markup, Refused> {
    let read = console.hub().read(|ledger| Ok((ledger.fleet().name.clone(), ledger.fleet().demo))).await;
    let (fleet, demo) = read.map_err(|error: HubError| Refused::from(error))?;
    let users = session::Users::of(console.hub().folder());
    let shown = if demo { users.shown().unwrap_or_default() } else { None };
    let none_yet = users.count().is_ok_and(|count| count == 0);
    let key = console.hub().root().shop.id().0.map(|byte| format!("{byte:02X}")).join(" ");
    let address = headers.get(header::HOST).and_then(|value| value.to_str().ok()).unwrap_or_default();
    let say = |key: &str| choice.language.say(key, &[]);
    let main = html! {
        h1 { (fleet) }
        @if let Some((wrong, _)) = wrong { p class="strip" role="alert" id="wrong" { (wrong) } }
        @if none_yet { p class="strip" { (say("sign-in-nobody")) } }
        @if let Some((name, password)) = &shown {
            p class="strip demo" {
                (choice.language.say("sign-in-demo", &[
                    ("name", Arg::Text(name)), ("password", Arg::Text(password)),
                ]))
            }
        }
        form method="post" action="/sign-in" class="stack" {
            @if let Some(to) = to.filter(|to| is_local(to)) { input type="hidden" name="to" value=(to); }
            label for="name" { (say("sign-in-name")) }
            input id="name" name="name" autocomplete="username" required autocapitalize="words"
                value=[wrong.map(|(_, name)| name)] aria-describedby=[wrong.map(|_| "wrong")];
            label for="password" { (say("sign-in-password")) }
            input id="password" name="password" type="password" autocomplete="current-password" required;
            label class="show" { input type="checkbox" id="show-password"; " " (say("sign-in-show")) }
            button class="main" { (say("sign-in")) }
        }
        p { (choice.language.say("sign-in-address", &[("address", Arg::Text(address))])) }
        p { (choice.language.say("sign-in-key", &[("key", Arg::Text(&key))])) }
        p { (say("sign-in-forgotten")) }
    };
    let back = to.map_or_else(|| "/sign-in".to_owned(), |to| format!("/sign-in?to={}", escaped(to)));
    Ok(frame::bare(choice, "place-sign-in", &back, &main))
}
