//! People and phones: who signs, what they sign on, and who may open these pages.

mod code;
mod page;
mod says;
mod signs;
mod stop;
mod view;

use axum::Router;
use axum::extract::State;
use axum::http::{HeaderMap, header};
use axum::response::Response;
use axum::routing::{get, post};
use serde::Deserialize;
use sumpbook_daybook::exchange::{self, ExchangeError};
use sumpbook_trade::PersonId;
use sumpbook_trade::record::Role;

use super::Console;
use super::form::Fields;
use super::place::Place;
use super::refused::Refused;
use super::session::{self, Users};
use super::visit::Visit;
use crate::NewPerson;
use crate::console::query::Query;

pub(super) use code::{Codes, picture};

/// Its pages.
pub(super) fn routes() -> Router<Console> {
    Router::new()
        .route("/people", get(page))
        .route("/people/person", post(person))
        .route("/people/new-pin", post(new_pin))
        .route("/people/code", post(code::make))
        .route("/people/code/{name}", get(code::page))
        .route("/people/let-in", post(let_in))
        .route("/people/phone/{key}/stop", get(stop::page).post(stop::stop))
        .route("/people/says", post(says::set))
        .route("/people/sign-in", post(signs::set))
        .route("/people/sign-in/remove", post(signs::remove))
}

#[derive(Debug, Default, Deserialize)]
struct Asked {
    /// Who was kept just now.
    kept: Option<PersonId>,
}

/// `GET /people`
async fn page(
    visit: Visit,
    State(console): State<Console>,
    Query(asked): Query<Asked>,
    headers: HeaderMap,
) -> Result<Response, Refused> {
    let users = Users::of(console.hub().folder()).list();
    let users = users.map_err(|error| Refused::Broken(error.to_string()))?;
    let host = headers.get(header::HOST).and_then(|value| value.to_str().ok()).unwrap_or_default().to_owned();
    visit
        .show(
            Place::People,
            move |ledger, now| view::read(ledger, users, (host, asked.kept), now).map(Some),
            page::body,
        )
        .await
}

/// The roles of people, as the record names them.
pub(super) const ROLES: [(Role, &str); 5] = [
    (Role::Driver, "driver"),
    (Role::Crew, "crew"),
    (Role::Trainee, "trainee"),
    (Role::Mechanic, "mechanic"),
    (Role::Manager, "manager"),
];

/// `POST /people/person`: adds someone, or changes what they do; `gone` when they no longer work here.
async fn person(visit: Visit, State(console): State<Console>, fields: Fields) -> Result<Response, Refused> {
    let name = fields.owned("name").ok_or(Refused::Asked("people-no-name"))?;
    let role = fields.text("role").and_then(|word| ROLES.iter().find(|(_, known)| *known == word));
    let role = role.ok_or(Refused::Asked("people-no-role"))?.0;
    let gone = fields.text("gone").is_some();
    visit.may_write()?;
    // A sign-in whose person is gone could write nothing, not even that they are back.
    if gone && may_sign_in(&console, &name)? {
        let said = visit.say_with("people-signs-in", &[("name", name.as_str())]);
        return Err(Refused::Said(said));
    }
    let change = fields.text("change").is_some();
    let kept = visit.act(move |shop, hand| {
        // Written again in other letters, or with the role the form was left at, nobody becomes somebody else.
        let known = shop.ledger.fleet().person_by_name(&name).filter(|_| !change);
        if let Some(known) = known.filter(|known| known.role != role && !gone) {
            return Ok(Err((known.name.clone(), known.role)));
        }
        let (name, role) = known.map_or((name, role), |known| (known.name.clone(), known.role));
        shop.add_person(NewPerson { name, role, gone }, hand).map(Ok)
    });
    match kept.await? {
        Ok(person) => Ok(visit.go(format!("/people?kept={person}#people"))),
        Err((name, is)) => {
            let word = ROLES.iter().find(|(known, _)| *known == is).map_or("driver", |(_, word)| *word);
            let is = visit.say(&format!("role-{word}"));
            Err(Refused::Said(visit.say_with("people-here-already", &[("name", &name), ("role", &is)])))
        }
    }
}

/// Whether somebody of this name has a sign-in that may write.
fn may_sign_in(console: &Console, name: &str) -> Result<bool, Refused> {
    let users = Users::of(console.hub().folder()).list();
    let users = users.map_err(|error| Refused::Broken(error.to_string()))?;
    let words = |name: &str| name.split_whitespace().map(str::to_lowercase).collect::<Vec<_>>();
    Ok(users.iter().any(|(known, role)| *role == session::Role::Shop && words(known) == words(name)))
}

/// `POST /people/new-pin`: whoever forgot theirs, or let it be seen, chooses another at the next signature.
async fn new_pin(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let name = fields.owned("name").ok_or(Refused::Asked("people-no-name"))?;
    visit
        .write("/people", move |shop, hand| {
            let person = shop.person(&name)?;
            shop.ask_new_pin(person, hand).map(|_| ())
        })
        .await
}

/// `POST /people/let-in`: the waiting phone of this key, by the visitor's name.
async fn let_in(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let key = fields.owned("key").ok_or(Refused::NotThere)?;
    if fields.text("same").is_none() {
        return Err(Refused::Asked("people-compare-first"));
    }
    let accepted = visit.act(move |shop, hand| {
        let accepted = exchange::accept(&mut shop.ledger, &key, hand.person, hand.at);
        Ok(accepted.map(|_| ()))
    });
    accepted.await?.map_err(|error| match error {
        ExchangeError::CodeExpired(_) => Refused::Asked("people-code-ran-out"),
        ExchangeError::CodeUsed(_) => Refused::Asked("people-code-used"),
        ExchangeError::CodeUnknown => Refused::Asked("people-code-unknown"),
        ExchangeError::NobodyWaiting(_) => Refused::Asked("people-nobody-waits"),
        other => Refused::Broken(other.to_string()),
    })?;
    Ok(visit.go("/people#phones"))
}
