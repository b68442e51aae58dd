//! What do the rules count with: every number of R1 to R14 and of the forecast, the shop's to edit.

mod figure;
mod page;

pub(super) use figure::text;

use axum::Router;
use axum::response::Response;
use axum::routing::get;
use serde::Serialize;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::Stamp;
use sumpbook_trade::record::{RuleNumber, RuleNumbers};

use super::Console;
use super::form::Fields;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;

/// Its page, and the form on it.
pub(super) fn routes() -> Router<Console> {
    Router::new().route("/numbers", get(numbers).post(set))
}

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct NumbersView {
    known_at: Stamp,
    numbers: Vec<NumberRow>,
}

/// One number. Figures are text as people read them: "1.28".
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct NumberRow {
    id: &'static str,
    value: String,
    /// What most fleets have; where the two differ the page says so.
    usual: String,
    least: String,
    most: String,
}

/// `GET /numbers`
async fn numbers(visit: Visit) -> Result<Response, Refused> {
    visit.show(Place::Due, |ledger, now| Ok(Some(read(ledger, now))), page::body).await
}

fn read(ledger: &Ledger, now: Stamp) -> NumbersView {
    let usual = RuleNumbers::default();
    let row = |number: &RuleNumber| NumberRow {
        id: number.id,
        value: figure::text(number.of(&ledger.fleet().numbers), number.places),
        usual: figure::text(number.of(&usual), number.places),
        least: figure::text(number.least, number.places),
        most: figure::text(number.most, number.places),
    };
    NumbersView { known_at: now, numbers: RuleNumber::ALL.iter().map(row).collect() }
}

/// `POST /numbers`: all of them at once; an empty field is the usual one.
async fn set(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let mut numbers = RuleNumbers::default();
    for number in RuleNumber::ALL {
        let Some(text) = fields.text(number.id) else { continue };
        let given = figure::read(text, number.places);
        let within = given.filter(|given| (number.least..=number.most).contains(given));
        let Some(given) = within else {
            let language = visit.language();
            let name = language.say(&format!("number-{}", number.id), &[]);
            let (least, most) =
                (figure::text(number.least, number.places), figure::text(number.most, number.places));
            let args = [("name", &name), ("least", &least), ("most", &most)];
            let args = args.map(|(key, text)| (key, Arg::Text(text)));
            return Err(Refused::Said(language.say("numbers-out-of-bounds", &args)));
        };
        number.put(&mut numbers, given);
    }
    visit.write("/numbers", move |shop, hand| shop.set_numbers(numbers, hand).map(|_| ())).await
}
