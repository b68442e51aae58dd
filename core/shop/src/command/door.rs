//! `code`, `accept` and `phones`: letting phones in that reach the hub.

use std::path::Path;

use qrcodegen::{QrCode, QrCodeEcc};
use serde::Serialize;
use sumpbook_daybook::exchange::{self, CodeState, ExchangeError, MOST_UNITS};
use sumpbook_trade::{Stamp, TruckId};

use super::args::{Accept, Code, Reading, StopPhone};
use super::exchange::moment;
use super::found::open;
use super::out::Said;
use super::{CommandError, clock};
use crate::{Hand, phone_by_fingerprint, revoke};

/// Shows a code, as a picture and as text.
///
/// # Errors
/// When a unit is unknown or too many are named.
pub(super) fn code(folder: &Path, args: &Code) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let now = moment(&shop, args.received)?;
    if !args.hub.rsplit_once(':').is_some_and(|(host, port)| !host.is_empty() && port.parse::<u16>().is_ok())
    {
        return Err(CommandError::Asked(format!(
            "'{}' is no address with a port, such as sumpbook.yard:8443. No code was made.",
            args.hub
        )));
    }
    let all = shop.ledger.fleet().trucks.len();
    let trucks: Vec<TruckId> = match args.units.as_slice() {
        [] if all <= MOST_UNITS => shop.ledger.fleet().trucks.keys().copied().collect(),
        [] => Vec::new(),
        named if named.len() > MOST_UNITS => {
            return Err(CommandError::Asked(format!(
                "a code holds at most {MOST_UNITS} units. No code was made. Name fewer; the phone can ask for others."
            )));
        }
        named => named.iter().map(|door| shop.unit(door)).collect::<Result<_, _>>()?,
    };
    let code = exchange::invite_by_code(&mut shop.ledger, &trucks, &args.hub, now)?;
    let text = code.to_text()?;
    let groups: Vec<String> =
        text.as_bytes().chunks(4).map(|group| String::from_utf8_lossy(group).into_owned()).collect();
    let lines: Vec<String> = groups.chunks(12).map(|line| line.join(" ")).collect();
    let picture = QrCode::encode_text(&text, QrCodeEcc::Medium).map(|qr| drawn(&qr)).unwrap_or_default();
    let said = format!(
        "{picture}\n{}\n\nOne phone, within 15 minutes. Whoever sees it can ask to be let in; you still compare keys.",
        lines.join("\n")
    );
    Said::new(
        said,
        &serde_json::json!({ "code": text, "hub": args.hub, "units": trucks.len(), "minutes": 15 }),
    )
}

/// Two rows of squares in one line of text.
fn drawn(qr: &QrCode) -> String {
    const QUIET: i32 = 2;
    let range = || -QUIET..qr.size() + QUIET;
    let line = |y: i32| -> String {
        range()
            .map(|x| match (qr.get_module(x, y), qr.get_module(x, y + 1)) {
                (true, true) => '\u{2588}',
                (true, false) => '\u{2580}',
                (false, true) => '\u{2584}',
                (false, false) => ' ',
            })
            .collect()
    };
    range().step_by(2).map(line).collect::<Vec<_>>().join("\n")
}

/// Lets a waiting phone in.
///
/// # Errors
/// When nobody with that key waits, or its code does not hold.
pub(super) fn accept(folder: &Path, args: &Accept) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let now = moment(&shop, args.received)?;
    let by = Some(shop.person(&args.by)?);
    let phone = exchange::accept(&mut shop.ledger, &args.fingerprint, by, now)?;
    let text = format!("{} is let in. It gets the books with its next exchange.", phone.name);
    Said::new(text, &serde_json::json!({ "name": phone.name, "admitted": phone.admitted }))
}

/// Stops a phone.
///
/// # Errors
/// When no phone has that key, or it is stopped already.
pub(super) fn stop(folder: &Path, args: &StopPhone) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let now = moment(&shop, args.received)?;
    let phone = phone_by_fingerprint(&shop, &args.fingerprint)?;
    let hand = Hand { person: Some(shop.person(&args.by)?), at: now, received: args.received };
    let entry = revoke(&mut shop, phone, &args.why, &hand)?;
    let text = "That phone is stopped. What the shop held of it counts on. What is still only on the phone, or \
                comes by file, waits under set aside until a person decides.";
    Said::new(text, &serde_json::json!({ "entry": entry }))
}

#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
struct PhoneJson {
    name: String,
    key: String,
    state: &'static str,
    last_heard: Option<Stamp>,
    #[serde(skip_serializing_if = "Option::is_none")]
    let_in: Option<Stamp>,
    clock_off_ms: Option<i64>,
}

/// Lists the phones.
///
/// # Errors
/// As any read.
pub(super) fn phones(folder: &Path, args: &Reading) -> Result<Said, CommandError> {
    let shop = open(folder)?;
    let now = args.as_of.unwrap_or_else(clock::now);
    let fleet = shop.ledger.fleet();
    let heard = shop.ledger.store().last_exchanges(now.unix_ms())?;
    let mut phones = Vec::new();
    for (id, device) in &fleet.devices {
        let last = heard.iter().find(|row| row.device == *id);
        let stopped = fleet.revoked.iter().any(|(revoked, _, _)| revoked == id);
        phones.push(PhoneJson {
            name: device.name.clone(),
            key: exchange::PendingDevice::fingerprint_of(sumpbook_daybook::gate::KeyId(*id)),
            state: if stopped { "stopped" } else { "let in" },
            last_heard: last
                .and_then(|row| Stamp::from_parts(row.at_ms, 0))
                .map(|at| clock::in_zone(at, fleet.zone)),
            let_in: Stamp::from_parts(device.let_in_ms, 0).map(|at| clock::in_zone(at, fleet.zone)),
            clock_off_ms: last.and_then(|row| row.off_ms),
        });
    }
    let waiting = match exchange::pending(&shop.ledger, now) {
        Ok(waiting) => waiting,
        Err(ExchangeError::NotTheShop) => Vec::new(),
        Err(error) => return Err(error.into()),
    };
    phones.extend(waiting.into_iter().map(|device| PhoneJson {
        name: device.name,
        key: device.fingerprint,
        state: match device.code {
            CodeState::Open => "waits",
            CodeState::Expired(_) => "its code ran out",
            CodeState::Used(_) => "its code was another's",
            CodeState::Unknown => "its code is unknown",
        },
        last_heard: None,
        let_in: None,
        clock_off_ms: None,
    }));
    let mut lines: Vec<String> = phones
        .iter()
        .map(|phone| {
            let heard = phone.last_heard.map_or_else(|| "never".to_owned(), |at| at.to_string());
            format!("{}  {}  {}, heard {heard}", phone.key, phone.name, phone.state)
        })
        .collect();
    if lines.is_empty() {
        lines.push("No phone added yet. `sumpbook code` or `sumpbook invite` adds one.".to_owned());
    }
    Said::new(lines.join("\n"), &phones)
}
