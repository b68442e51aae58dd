//! Certificates: the queue of what waits for one, signing one and the next, and the slip that goes with it.

mod page;
mod slip;
mod view;

use axum::Form;
use axum::Router;
use axum::extract::Path;
use axum::response::Response;
use axum::routing::get;
use serde::Deserialize;
use sumpbook_trade::EntryId;
use sumpbook_trade::record::RepairVerdict;

use super::Console;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;
use crate::certify::certify;
use crate::console::query::Query;

use view::Asked;

/// Its pages.
pub(super) fn routes() -> Router<Console> {
    Router::new()
        .route("/certificates", get(queue).post(sign))
        .route("/certificates/{entry}/slip", get(print_slip))
}

/// `GET /certificates`: the first that waits, or the one asked for.
async fn queue(visit: Visit, Query(asked): Query<Asked>) -> Result<Response, Refused> {
    visit.show(Place::Day, move |ledger, now| view::read(ledger, now, &asked).map(Some), page::body).await
}

/// What was chosen; nothing is chosen beforehand.
#[derive(Debug, Deserialize)]
struct Signed {
    unit: String,
    /// The item, with its place behind a slash.
    item: String,
    verdict: Option<RepairVerdict>,
    #[serde(default)]
    words: String,
}

/// `POST /certificates`: signs one in the visitor's name and goes on to the next.
async fn sign(visit: Visit, Form(signed): Form<Signed>) -> Result<Response, Refused> {
    let Some(verdict) = signed.verdict else { return Err(Refused::Said(visit.say("certify-which"))) };
    if signed.words.trim().is_empty() {
        return Err(Refused::Said(visit.say("certify-words")));
    }
    let write = visit.write_then(move |shop, hand| {
        let truck = shop.unit(&signed.unit)?;
        let entry = certify(shop, truck, &signed.item, verdict, &signed.words, hand)?;
        Ok(format!("/certificates?signed={entry}"))
    });
    write.await
}

/// `GET /certificates/{entry}/slip`
async fn print_slip(visit: Visit, Path(entry): Path<String>) -> Result<Response, Refused> {
    let entry: EntryId = entry.parse().map_err(|_| Refused::NotThere)?;
    visit.show(Place::Day, move |ledger, now| crate::slip::slip(ledger, entry, now), slip::body).await
}
