//! A code for one phone: a picture to scan and the same as text, for a quarter of an hour.

use std::sync::Mutex;

use axum::extract::{Path, State};
use axum::response::Response;
use maud::{Markup, html};
use qrcodegen::{QrCode, QrCodeEcc};
use serde::Serialize;
use sumpbook_daybook::exchange::{self, MOST_UNITS};
use sumpbook_daybook::gate::KeyId;
use sumpbook_trade::TruckId;

use crate::console::Console;
use crate::console::form::Fields;
use crate::console::place::Place;
use crate::console::refused::Refused;
use crate::console::visit::{Body, Telling, Visit};
use sumpbook_daybook::text::Arg;

/// Codes that stand on a screen. They are nowhere else: the books keep only that a code was made.
#[derive(Debug, Default)]
pub(in crate::console) struct Codes(Mutex<Vec<Shown>>);

#[derive(Clone, Debug)]
struct Shown {
    /// Part of the page's address; says nothing of the code.
    name: String,
    text: String,
    hub: String,
    expires_ms: i64,
}

impl Codes {
    fn keep(&self, shown: Shown, now_ms: i64) {
        let mut all = self.0.lock().unwrap_or_else(std::sync::PoisonError::into_inner);
        all.retain(|one| one.expires_ms > now_ms);
        all.push(shown);
    }

    fn find(&self, name: &str, now_ms: i64) -> Option<Shown> {
        let all = self.0.lock().unwrap_or_else(std::sync::PoisonError::into_inner);
        all.iter().find(|one| one.name == name && one.expires_ms > now_ms).cloned()
    }
}

/// The page and its JSON.
#[derive(Clone, Serialize)]
#[serde(rename_all = "kebab-case")]
struct CodeView {
    /// The code as text, in groups of four.
    code: String,
    /// Where the phone will look for the shop.
    hub: String,
    /// The shop's key, as the phone will show it.
    key: String,
    /// Seconds that it still holds.
    seconds: i64,
    #[serde(skip)]
    picture: Option<QrCode>,
}

/// `POST /people/code`
pub(super) async fn make(
    visit: Visit,
    State(console): State<Console>,
    fields: Fields,
) -> Result<Response, Refused> {
    let hub = fields.owned("hub").ok_or(Refused::Asked("code-no-hub"))?;
    // A host without its port is at the port of every browser.
    let hub = if is_address(&hub) { hub } else { format!("{hub}:443") };
    if !is_address(&hub) {
        return Err(Refused::Asked("code-no-hub"));
    }
    let doors: Vec<String> = fields
        .text("units")
        .unwrap_or_default()
        .split([',', ' '])
        .filter(|d| !d.is_empty())
        .map(str::to_owned)
        .collect();
    if doors.len() > MOST_UNITS {
        return Err(Refused::Asked("code-many-units"));
    }
    let (address, now_ms) = (hub.clone(), visit.now().unix_ms());
    let made = visit.act(move |shop, hand| {
        let fleet = shop.ledger.fleet();
        let trucks: Vec<TruckId> = match doors.as_slice() {
            [] if fleet.trucks.len() <= MOST_UNITS => fleet.trucks.keys().copied().collect(),
            [] => Vec::new(),
            named => named.iter().map(|door| shop.unit(door)).collect::<Result<_, _>>()?,
        };
        let code = exchange::invite_by_code(&mut shop.ledger, &trucks, &address, hand.at);
        Ok(code.and_then(|code| Ok((code.to_text()?, code.invitation.expires_ms))))
    });
    let (text, expires_ms) = made.await?.map_err(|error| Refused::Broken(error.to_string()))?;
    let name = random_name()?;
    let expires_ms = i64::try_from(expires_ms).unwrap_or(now_ms);
    console.codes().keep(Shown { name: name.clone(), text, hub, expires_ms }, now_ms);
    Ok(visit.go(format!("/people/code/{name}")))
}

fn is_address(text: &str) -> bool {
    // An address of numbers and colons stands in brackets, or its end would be taken for a port.
    let plain = |host: &str| !host.contains(':') || (host.starts_with('[') && host.ends_with(']'));
    let host = |host: &str| !host.is_empty() && !host.contains(['/', '@', ' ']) && plain(host);
    let port = |port: &str| port.parse::<u16>().is_ok_and(|port| port > 0);
    text.rsplit_once(':').is_some_and(|(name, at)| host(name) && port(at))
}

fn random_name() -> Result<String, Refused> {
    let mut bytes = [0u8; 8];
    getrandom::fill(&mut bytes).map_err(|error| Refused::Broken(error.to_string()))?;
    Ok(bytes.iter().map(|byte| format!("{byte:02x}")).collect())
}

/// `GET /people/code/...`
pub(super) async fn page(
    visit: Visit,
    State(console): State<Console>,
    Path(name): Path<String>,
) -> Result<Response, Refused> {
    visit.may_write()?;
    let now_ms = visit.now().unix_ms();
    let shown = console.codes().find(&name, now_ms).ok_or(Refused::Asked("people-code-ran-out"))?;
    let key = fingerprint(console.hub().root().shop.id());
    let groups: Vec<&str> =
        shown.text.as_bytes().chunks(4).filter_map(|g| std::str::from_utf8(g).ok()).collect();
    let view = CodeView {
        code: groups.join(" "),
        hub: shown.hub,
        key,
        seconds: shown.expires_ms.saturating_sub(now_ms) / 1_000,
        picture: QrCode::encode_text(&shown.text, QrCodeEcc::Medium).ok(),
    };
    visit.show(Place::People, move |_, _| Ok(Some(view)), body).await
}

pub(super) fn fingerprint(key: KeyId) -> String {
    exchange::PendingDevice::fingerprint_of(key)
}

fn body(telling: &Telling, view: &CodeView) -> Body {
    let (minutes, seconds) = (view.seconds / 60, format!("{:02}", view.seconds % 60));
    let left = telling
        .with("code-left", &[("minutes", Arg::Text(&minutes.to_string())), ("seconds", Arg::Text(&seconds))]);
    let main = html! {
        h1 { (telling.t("add-phone")) }
        p { (telling.t("code-how")) }
        p class="strip" role="timer" data-seconds=(view.seconds) { (left) }
        @if let Some(picture) = &view.picture { (self::picture(picture, &telling.t("code-picture"))) }
        p { (telling.t("code-same")) }
        p class="code" { (view.code) }
        p { (telling.with("sign-in-address", &[("address", Arg::Text(&view.hub))])) }
        p { (telling.with("code-key", &[("key", Arg::Text(&view.key))])) }
        p { a href="/people#phones" { (telling.t("code-then")) } }
    };
    Body { title: telling.t("add-phone"), main }
}

/// The picture, black on white in every theme: a camera reads nothing else surely.
pub(in crate::console) fn picture(picture: &QrCode, words: &str) -> Markup {
    const QUIET: i32 = 4;
    let size = picture.size();
    let whole = size.saturating_add(2 * QUIET);
    let mut path = String::new();
    for y in 0..size {
        for x in (0..size).filter(|x| picture.get_module(*x, y)) {
            path.push_str(&format!("M{} {}h1v1h-1Z", x.saturating_add(QUIET), y.saturating_add(QUIET)));
        }
    }
    html! {
        svg class="qr" viewBox=(format!("0 0 {whole} {whole}")) role="img" aria-label=(words) shape-rendering="crispEdges" {
            rect class="qr-white" width=(whole) height=(whole) {}
            path class="qr-black" d=(path) {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_has_a_host_and_a_port() {
        for address in ["sumpbook.yard:8443", "192.168.1.5:8443", "[fe80::1]:8443"] {
            assert!(is_address(address), "{address}");
        }
        for other in ["", ":8443", "yard", "yard:", "yard:99999", "https://yard:8443", "a b:1"] {
            assert!(!is_address(other), "{other}");
        }
    }
}
