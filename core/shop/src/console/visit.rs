//! One request of someone who is in: who, in which language, asking for the page or its record.

use std::ops::Deref;

use axum::Json;
use axum::extract::FromRequestParts;
use axum::http::request::Parts;
use axum::response::{IntoResponse, Redirect, Response};
use maud::Markup;
use serde::Serialize;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::{PersonId, Stamp};

use super::form::Fields;
use super::language::{self, Choice, Language, Measures};
use super::place::Place;
use super::refused::Refused;
use super::session::{Open, Role};
use super::words::Words;
use super::{Console, answer, frame};
use crate::{Hand, Shop, ShopError};

/// A request that passed the gate.
#[derive(Clone)]
pub(super) struct Visit {
    console: Console,
    open: Open,
    choice: Choice,
    json: bool,
    back: String,
}

/// What every page shows around its own: read at the same moment.
#[derive(Clone, Debug)]
pub(super) struct Around {
    pub(super) fleet: String,
    pub(super) demo: bool,
    pub(super) aside: usize,
    /// The moment of the answer.
    pub(super) now: Stamp,
    zone: chrono_tz::Tz,
    today: chrono::NaiveDate,
}

/// A page as it is told to one reader: its words, and what its forms carry.
pub(super) struct Telling {
    words: Words,
    pub(super) place: Option<Place>,
    pub(super) around: Around,
    pub(super) back: String,
    pub(super) name: String,
    role: Role,
    csrf: String,
}

/// A page's title and what stands in its middle.
pub(super) struct Body {
    pub(super) title: String,
    pub(super) main: Markup,
}

impl Deref for Telling {
    type Target = Words;

    fn deref(&self) -> &Words {
        &self.words
    }
}

impl Telling {
    /// Whether forms are shown: a reader has none.
    pub(super) fn writes(&self) -> bool {
        self.role == Role::Shop
    }

    /// The hidden field that every form with `method=post` carries.
    pub(super) fn token(&self) -> Markup {
        maud::html! { input type="hidden" name="csrf" value=(self.csrf); }
    }

    /// The same words for a page about another day.
    pub(super) fn of_day(&self, day: chrono::NaiveDate) -> Words {
        Words { day, ..self.words }
    }
}

impl Visit {
    /// Now, by the hub's clock.
    pub(super) fn now(&self) -> Stamp {
        self.console.hub().now()
    }

    /// The shop's folder.
    pub(super) fn folder(&self) -> std::path::PathBuf {
        self.console.hub().folder().to_owned()
    }

    /// A text in the visitor's language.
    pub(super) fn say(&self, key: &str) -> String {
        self.choice.language.say(key, &[])
    }

    /// The same, with words in it.
    pub(super) fn say_with(&self, key: &str, args: &[(&str, &str)]) -> String {
        let args: Vec<(&str, Arg<'_>)> = args.iter().map(|(name, text)| (*name, Arg::Text(text))).collect();
        self.choice.language.say(key, &args)
    }

    /// The visitor's language.
    pub(super) fn language(&self) -> Language {
        self.choice.language
    }

    /// The units the visitor has chosen.
    pub(super) fn measures(&self) -> Measures {
        self.choice.measures
    }

    /// Reads a view and shows it: as a page, or as JSON when that was asked for. `read` runs beside the
    /// answering threads with the books of one moment; none is "not there".
    pub(super) async fn show<T: Serialize + Send + 'static>(
        self,
        place: Place,
        read: impl FnOnce(&Ledger, Stamp) -> Result<Option<T>, ShopError> + Send + 'static,
        page: impl FnOnce(&Telling, &T) -> Body,
    ) -> Result<Response, Refused> {
        let now = self.now();
        let seen = self.console.hub().read(move |ledger| {
            let Some(view) = read(ledger, now)? else { return Ok(None) };
            Ok(Some((view, Around::read(ledger, now)?)))
        });
        let (view, around) = seen.await?.ok_or(Refused::NotThere)?;
        if self.json {
            return Ok(Json(view).into_response());
        }
        let telling = self.telling(place, around);
        let body = page(&telling, &view);
        Ok(frame::page(&telling, &body).into_response())
    }

    /// The same for a page of the unit with this door number; none is "no such unit".
    pub(super) async fn show_unit<T: Serialize + Send + 'static>(
        self,
        place: Place,
        door: &str,
        read: impl FnOnce(&Ledger, Stamp) -> Result<Option<T>, ShopError> + Send + 'static,
        page: impl FnOnce(&Telling, &T) -> Body,
    ) -> Result<Response, Refused> {
        self.show(place, read, page).await.map_err(|refused| match refused {
            Refused::NotThere => Refused::NoUnit(door.trim().to_owned()),
            other => other,
        })
    }

    /// Writes in the visitor's name and goes to a page. The visitor's own name is a person of the fleet; with
    /// any other nothing is written.
    pub(super) async fn write(
        self,
        then: impl Into<String>,
        work: impl FnOnce(&mut Shop, &Hand) -> Result<(), ShopError> + Send + 'static,
    ) -> Result<Response, Refused> {
        let then = then.into();
        self.write_then(move |shop, hand| work(shop, hand).map(|()| then)).await
    }

    /// The same; where to go the work itself says.
    pub(super) async fn write_then(
        self,
        work: impl FnOnce(&mut Shop, &Hand) -> Result<String, ShopError> + Send + 'static,
    ) -> Result<Response, Refused> {
        let then = self.act(work).await?;
        Ok(self.go(then))
    }

    /// Writes in the visitor's name, as [`Visit::write`], and gives back what `work` gives.
    pub(super) async fn act<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Shop, &Hand) -> Result<T, ShopError> + Send + 'static,
    ) -> Result<T, Refused> {
        self.may_write()?;
        let (name, now) = (self.open.name.clone(), self.now());
        let written = self.console.hub().write(move |shop| {
            let person: PersonId = shop.person(&name)?;
            let at = Stamp::from(now.moment().with_timezone(&shop.ledger.fleet().zone).fixed_offset());
            work(shop, &Hand::of(person, at))
        });
        Ok(written.await?)
    }

    /// Reads beside the answering threads, as [`Visit::show`] does.
    pub(super) async fn read<T: Send + 'static>(
        &self,
        work: impl FnOnce(&Ledger, Stamp) -> Result<T, ShopError> + Send + 'static,
    ) -> Result<T, Refused> {
        let now = self.now();
        Ok(self.console.hub().read(move |ledger| work(ledger, now)).await?)
    }

    /// Why, and that it is said by name: the field `name` must hold the visitor's own.
    pub(super) fn why_by_name(&self, fields: &Fields) -> Result<String, Refused> {
        let why = fields.owned("why").ok_or(Refused::Asked("aside-no-reason"))?;
        let name = fields.text("name").ok_or(Refused::Asked("aside-no-name"))?;
        if name.eq_ignore_ascii_case(self.name()) { Ok(why) } else { Err(Refused::Asked("aside-other-name")) }
    }

    /// Refuses whoever may only read.
    pub(super) fn may_write(&self) -> Result<(), Refused> {
        if self.open.role == Role::Shop { Ok(()) } else { Err(Refused::Reader) }
    }

    /// After something was done: on to a page.
    pub(super) fn go(&self, then: impl Into<String>) -> Response {
        let then = then.into();
        if self.json {
            return Json(serde_json::json!({ "see": then })).into_response();
        }
        Redirect::to(&then).into_response()
    }

    /// Who visits, by the name of the sign-in.
    pub(super) fn name(&self) -> &str {
        &self.open.name
    }

    fn telling(&self, place: Place, around: Around) -> Telling {
        let words = Words { choice: self.choice, zone: around.zone, day: around.today };
        Telling {
            words,
            place: Some(place),
            around,
            back: self.back.clone(),
            name: self.open.name.clone(),
            role: self.open.role,
            csrf: self.open.csrf.clone(),
        }
    }
}

impl Around {
    fn read(ledger: &Ledger, now: Stamp) -> Result<Around, ShopError> {
        let fleet = ledger.fleet();
        Ok(Around {
            fleet: fleet.name.clone(),
            demo: fleet.demo,
            aside: ledger.store().truth().aside()?.len(),
            now,
            zone: fleet.zone,
            today: fleet.yard_day(now),
        })
    }
}

impl FromRequestParts<Console> for Visit {
    type Rejection = Refused;

    async fn from_request_parts(parts: &mut Parts, console: &Console) -> Result<Visit, Refused> {
        let open = parts.extensions.get::<Open>().cloned().ok_or(Refused::SignIn { to: None })?;
        Ok(Visit {
            console: console.clone(),
            open,
            choice: Choice::of(&parts.headers),
            json: answer::wants_json(&parts.headers, &parts.extensions),
            back: language::back(&parts.method, &parts.uri, &parts.headers),
        })
    }
}
