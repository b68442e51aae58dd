//! A phone is lost: what becomes of its entries is said first, then it is stopped by name.

use axum::extract::Path;
use axum::response::Response;
use maud::html;
use serde::Serialize;
use sumpbook_daybook::text::Arg;
use sumpbook_trade::Stamp;

use super::code::fingerprint;
use crate::console::form::Fields;
use crate::console::language::escaped;
use crate::console::place::Place;
use crate::console::refused::Refused;
use crate::console::visit::{Body, Telling, Visit};
use crate::{phone_by_fingerprint, revoke};

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
struct StopView {
    phone: String,
    key: String,
    /// Stopped before.
    stopped: bool,
    last_heard: Option<Stamp>,
}

/// `GET /people/phone/4F1A.../stop`
pub(super) async fn page(visit: Visit, Path(key): Path<String>) -> Result<Response, Refused> {
    visit
        .show(
            Place::People,
            move |ledger, now| {
                let fleet = ledger.fleet();
                let wanted = plain(&key);
                let id = |id: &[u8; 8]| sumpbook_daybook::gate::KeyId(*id);
                let found = fleet.devices.iter().find(|(known, _)| plain(&fingerprint(id(known))) == wanted);
                let Some((known, device)) = found else { return Ok(None) };
                let last = ledger.store().last_exchanges(now.unix_ms())?;
                let last = last
                    .iter()
                    .find(|row| row.device == *known)
                    .and_then(|row| Stamp::from_parts(row.at_ms, 0));
                Ok(Some(StopView {
                    phone: device.name.clone(),
                    key: fingerprint(id(known)),
                    stopped: fleet.revoked.iter().any(|(revoked, _, _)| revoked == known),
                    last_heard: last
                        .map(|at| Stamp::from(at.moment().with_timezone(&fleet.zone).fixed_offset())),
                }))
            },
            body,
        )
        .await
}

/// `POST /people/phone/4F1A.../stop`
pub(super) async fn stop(visit: Visit, Path(key): Path<String>, fields: Fields) -> Result<Response, Refused> {
    let why = fields.owned("why").ok_or(Refused::Asked("stop-no-reason"))?;
    visit
        .write("/people#phones", move |shop, hand| {
            let phone = phone_by_fingerprint(shop, &key)?;
            revoke(shop, phone, &why, hand).map(|_| ())
        })
        .await
}

/// A fingerprint without its blanks.
pub(super) fn plain(fingerprint: &str) -> String {
    fingerprint.split_whitespace().collect::<String>().to_ascii_uppercase()
}

fn body(telling: &Telling, view: &StopView) -> Body {
    let title = telling.with("stop-title", &[("phone", Arg::Text(&view.phone))]);
    let heard = telling.at_or(view.last_heard, "never");
    let main = html! {
        h1 { (title) }
        p { (telling.t("head-last-heard")) ": " (heard) }
        p { (telling.with("code-key", &[("key", Arg::Text(&view.key))])) }
        @if view.stopped {
            p class="strip" { (telling.t("stop-already")) }
        } @else {
            ul {
                li { (telling.with("stop-held", &[("when", Arg::Text(&heard))])) }
                li { (telling.t("stop-still-there")) }
                li { (telling.t("stop-told")) }
                li { (telling.t("stop-for-ever")) }
            }
            @if telling.writes() {
                form method="post" action=(format!("/people/phone/{}/stop", escaped(&plain(&view.key)))) class="sheet-form" {
                    (telling.token())
                    label for="stop-why" { (telling.t("head-why")) }
                    input id="stop-why" name="why" size="40" required;
                    button class="main" { (telling.t("stop-phone")) }
                }
            }
            p { a href="/people#phones" { (telling.t("stop-not")) } }
        }
    };
    Body { title, main }
}
