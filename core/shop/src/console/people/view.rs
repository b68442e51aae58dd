//! People, phones and sign-ins, as the page and its JSON hold them.

use std::collections::BTreeMap;

use serde::Serialize;
use sumpbook_daybook::exchange::{self, CodeState, ExchangeError};
use sumpbook_daybook::gate::KeyId;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::record::ShopSays;
use sumpbook_trade::{Entry, PersonId, Stamp};

use super::code::fingerprint;
use crate::ShopError;
use crate::console::session::Role;
use crate::sheet::{Yard, day_number, is_silent, word};

/// Days back in which signatures are looked for: more would be read for a list that few look at.
const DAYS: i32 = 14;
/// A phone not heard from for so long is marked (24 h, the shop's limit).
const QUIET_MS: i64 = 24 * 60 * 60 * 1_000;

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct PeopleView {
    pub(super) people: Vec<PersonRow>,
    /// Who was added or changed just now.
    pub(super) kept: Option<Kept>,
    pub(super) phones: Vec<PhoneRow>,
    /// Phones that ask to be let in.
    pub(super) asks: Vec<AskRow>,
    /// What the phones say in the shop's own words.
    pub(super) says: ShopSays,
    /// Who may open these pages.
    pub(super) signs: Vec<SignRow>,
    /// The address this page was asked at: phones reach the hub there too.
    pub(super) hub: String,
}

/// Someone as they were kept.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct Kept {
    pub(super) name: String,
    pub(super) role: String,
    pub(super) gone: bool,
}

/// Someone of the fleet.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct PersonRow {
    pub(super) name: String,
    /// What they do: a word of the record.
    pub(super) role: String,
    /// Phones they signed on in the last days, the latest first.
    pub(super) phones: Vec<String>,
    /// Their newest signature of the last days.
    pub(super) last_signed: Option<Stamp>,
    /// Whether the PIN was given at it.
    pub(super) pin_given: Option<bool>,
    /// A new PIN was asked for then, and none was given since.
    pub(super) new_pin_asked: Option<Stamp>,
}

/// A phone that was let in.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct PhoneRow {
    pub(super) name: String,
    pub(super) key: String,
    pub(super) stopped: bool,
    pub(super) last_heard: Option<Stamp>,
    /// Let in at.
    pub(super) added: Stamp,
    /// Not heard from for 24 hours; one that was never heard from, not for 24 hours since it was let in.
    pub(super) quiet: bool,
    /// Everything here up to this moment was told it; none when nothing was.
    pub(super) news_upto: Option<Stamp>,
    /// It was told everything that is here now.
    pub(super) has_all: bool,
    /// The hub's clock minus its own, milliseconds.
    pub(super) clock_off_ms: Option<i64>,
    /// The version of its program, as it said itself, and when that was first heard.
    pub(super) program: Option<String>,
    pub(super) program_since: Option<Stamp>,
}

/// A phone that asks.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct AskRow {
    pub(super) name: String,
    pub(super) key: String,
    /// What its code is worth: `open`, `ran-out`, `used`, `unknown`.
    pub(super) code: &'static str,
}

/// A sign-in of the console.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct SignRow {
    pub(super) name: String,
    pub(super) role: Role,
    /// Somebody of this name is in the fleet; else the sign-in can write nothing.
    pub(super) is_person: bool,
}

pub(super) fn read(
    ledger: &Ledger,
    users: Vec<(String, Role)>,
    (hub, kept): (String, Option<PersonId>),
    now: Stamp,
) -> Result<PeopleView, ShopError> {
    let fleet = ledger.fleet();
    let yard = Yard::of(ledger, fleet.yard_day(now), now)?;
    let is_person = |name: &str| fleet.person_by_name(name).is_some_and(|person| !person.gone);
    let signs =
        users.into_iter().map(|(name, role)| SignRow { is_person: is_person(&name), name, role }).collect();
    let kept = kept.and_then(|kept| fleet.people.get(&kept));
    let kept = kept.map(|of| Kept { name: of.name.clone(), role: word(&of.role), gone: of.gone });
    Ok(PeopleView {
        kept,
        people: people(ledger, &yard)?,
        phones: phones(ledger, &yard)?,
        asks: asks(ledger, now)?,
        says: fleet.says.clone(),
        signs,
        hub,
    })
}

fn people(ledger: &Ledger, yard: &Yard) -> Result<Vec<PersonRow>, ShopError> {
    let truth = ledger.store().truth();
    let today = day_number(yard.day);
    let shop = ledger.root().shop.id();
    let mut signed: BTreeMap<PersonId, Vec<(i64, KeyId, i64)>> = BTreeMap::new();
    for row in truth.signed_on(today.saturating_sub(DAYS), today)? {
        signed.entry(row.person).or_default().push((row.at_ms, KeyId(row.device), row.n));
    }
    let mut rows = Vec::new();
    for person in ledger.fleet().people.values().filter(|person| !person.gone) {
        let mut on = signed.remove(&person.person).unwrap_or_default();
        on.sort_unstable_by_key(|signed| std::cmp::Reverse(signed.0));
        let last = on.first();
        let entry = match last {
            Some((_, _, n)) => truth.entry(*n)?.and_then(|held| Entry::from_payload(&held.row.payload).ok()),
            None => None,
        };
        // At the shop a password was given and no PIN is asked.
        let on_phone = last.is_some_and(|(_, key, _)| *key != shop);
        let given = entry.as_ref().filter(|entry| on_phone && entry.pin_given).map(|entry| entry.at);
        let new_pin_asked = person.new_pin_asked.filter(|asked| given.is_none_or(|given| given < *asked));
        rows.push(PersonRow {
            name: person.name.clone(),
            role: word(&person.role),
            phones: on
                .iter()
                .filter(|(_, key, _)| *key != shop)
                .map(|(_, key, _)| yard.phone(ledger, *key))
                .collect(),
            last_signed: last.map(|(at, _, _)| yard.stamp_ms(*at)),
            pin_given: entry.filter(|_| on_phone).map(|entry| entry.pin_given),
            new_pin_asked: new_pin_asked.map(|at| yard.stamp(at.moment())),
        });
    }
    rows.sort_by(|a, b| a.name.cmp(&b.name));
    Ok(rows)
}

fn phones(ledger: &Ledger, yard: &Yard) -> Result<Vec<PhoneRow>, ShopError> {
    let fleet = ledger.fleet();
    let truth = ledger.store().truth();
    let (last_n, now_ms) = (truth.last_n()?, yard.now.unix_ms());
    let heard = ledger.store().last_exchanges(now_ms)?;
    let programs = ledger.store().programs()?;
    let mut rows = Vec::new();
    for (id, device) in &fleet.devices {
        let program = programs.iter().find(|row| row.device == *id);
        let last = heard.iter().find(|row| row.device == *id);
        let told = last.filter(|row| row.to_n > 0);
        let upto = match told {
            Some(row) => truth.entry(row.to_n)?.map(|held| held.received_ms),
            None => None,
        };
        let stopped = fleet.revoked.iter().any(|(revoked, _, _)| revoked == id);
        let since_ms = now_ms.saturating_sub(QUIET_MS);
        let quiet = is_silent(last.map(|row| row.at_ms), device.let_in_ms, since_ms, now_ms);
        rows.push(PhoneRow {
            name: device.name.clone(),
            key: fingerprint(KeyId(*id)),
            stopped,
            last_heard: last.map(|row| yard.stamp_ms(row.at_ms)),
            added: yard.stamp_ms(device.let_in_ms),
            quiet: quiet && !stopped,
            news_upto: upto.map(|ms| yard.stamp_ms(ms)),
            has_all: told.is_some_and(|row| row.to_n >= last_n),
            clock_off_ms: last.and_then(|row| row.off_ms),
            program: program.map(|row| row.version.clone()),
            program_since: program.map(|row| yard.stamp_ms(row.since_ms)),
        });
    }
    rows.sort_by(|a, b| (a.stopped, &a.name).cmp(&(b.stopped, &b.name)));
    Ok(rows)
}

fn asks(ledger: &Ledger, now: Stamp) -> Result<Vec<AskRow>, ShopError> {
    let pending = match exchange::pending(ledger, now) {
        Ok(pending) => pending,
        Err(ExchangeError::Ledger(error)) => return Err(error.into()),
        // Whatever else: nobody waits that could be shown.
        Err(_) => Vec::new(),
    };
    let rows = pending.into_iter().map(|device| AskRow {
        name: device.name,
        key: device.fingerprint,
        code: match device.code {
            CodeState::Open => "open",
            CodeState::Expired(_) => "ran-out",
            CodeState::Used(_) => "used",
            CodeState::Unknown => "unknown",
        },
    });
    Ok(rows.collect())
}
