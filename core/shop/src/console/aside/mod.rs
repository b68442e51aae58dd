//! Set aside: what does not count until a person says so, readings in dispute, services entered twice, and
//! what was settled before.

mod page;
mod view;

use axum::Router;
use axum::response::Response;
use axum::routing::{get, post};
use sumpbook_trade::EntryId;
use sumpbook_trade::record::Verdict;

use super::Console;
use super::form::Fields;
use super::place::Place;
use super::refused::Refused;
use super::visit::Visit;
use crate::ShopError;
use crate::settle::{accept_late, decide};

/// Its page.
pub(super) fn routes() -> Router<Console> {
    Router::new().route("/set-aside", get(page)).route("/set-aside/decide", post(settle))
}

/// `GET /set-aside`
async fn page(visit: Visit) -> Result<Response, Refused> {
    visit.show(Place::Aside, |ledger, now| view::read(ledger, now).map(Some), page::body).await
}

/// `POST /set-aside/decide`: entries, what becomes of them, who says so and why.
async fn settle(visit: Visit, fields: Fields) -> Result<Response, Refused> {
    let ids = |name| fields.all(name).map(|id| id.parse::<EntryId>().map_err(|_| Refused::NotThere));
    let mut entries: Vec<EntryId> = ids("entry").collect::<Result<_, _>>()?;
    let why = visit.why_by_name(&fields)?;
    let verdict = match fields.text("verdict") {
        Some("use") => Verdict::Use,
        Some("leave-out") => Verdict::DoNotUse,
        Some("same-service") => Verdict::SameService,
        Some("reading-stands") => Verdict::ReadingStands,
        _ => return Err(Refused::Asked("aside-no-verdict")),
    };
    let seen = fields.text("seen").and_then(|seen| seen.parse().ok()).unwrap_or(i64::MAX);
    // Which service it is the same as is said with it: of another task it is another service.
    if verdict == Verdict::SameService {
        entries.extend(ids("with").collect::<Result<Vec<_>, _>>()?);
    }
    visit
        .write("/set-aside", move |shop, hand| {
            // What a stopped phone brought is accepted by its own kind of entry, which says so for ever. Decided about
            // before, it is the decision that is replaced.
            let mut late = false;
            for entry in &entries {
                if view::decided_after(&shop.ledger, *entry, seen)?.is_some() {
                    return Err(ShopError::DecidedMeanwhile);
                }
                late |= verdict == Verdict::Use
                    && view::is_of_stopped_phone(&shop.ledger, *entry)?
                    && view::decided_after(&shop.ledger, *entry, 0)?.is_none();
            }
            match late {
                true => accept_late(shop, &entries, &why, hand),
                false => decide(shop, &entries, verdict, &why, hand),
            }
            .map(|_| ())
        })
        .await
}
