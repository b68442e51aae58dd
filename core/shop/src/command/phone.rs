//! `phone DIR …`: a phone's own daybook, driven from here. For a depot PC, for scripts and for tests.

use std::fs;
use std::io::BufRead;
use std::path::Path;

use sumpbook_daybook::exchange::{self, ShopCode};
use sumpbook_daybook::judgement::is_shop_only;
use sumpbook_daybook::ledger::{Ledger, new_id};
use sumpbook_daybook::line::{self, Line, Writer};
use sumpbook_daybook::phone::{Daybook, FileSeal};
use sumpbook_trade::{EntryId, Stamp, Template};

use super::args::{Phone, PhoneVerb};
use super::exchange::{told, write_whole};
use super::out::{self, Said, counted};
use super::{CommandError, clock};
use crate::ShopError;
use crate::error::plain;

mod online;
mod photo;
mod show;
mod slip;
mod sound;

/// Where a phone on a computer keeps its key: a file for its owner alone.
const KEY_FILE: &str = "phone.key";

/// Does what the phone is asked.
///
/// # Errors
/// As each verb.
pub(super) fn phone(args: &Phone, json: bool) -> Result<Option<Said>, CommandError> {
    match &args.verb {
        None => who(args).map(Some),
        Some(PhoneVerb::Schema) => schema().map(Some),
        Some(PhoneVerb::Enrol { file, code, name }) => {
            enrol(args, file.as_deref(), code.as_deref(), name).map(Some)
        }
        Some(PhoneVerb::Exchange { seconds }) => online::exchange(args, *seconds).map(Some),
        Some(PhoneVerb::Photo { file }) => photo::keep(args, file).map(Some),
        Some(PhoneVerb::Sound { file }) => sound::keep(args, file).map(Some),
        Some(PhoneVerb::Record) => record(args, json).map(|()| None),
        Some(PhoneVerb::Show { screen, unit, person, stop, as_of }) => {
            let mut phone = open(args)?;
            let now = match as_of {
                Some(at) => clock::in_zone(*at, phone.ledger().fleet().zone),
                None => now(args, phone.ledger())?,
            };
            // What cannot be kept is folded for this once: a full or read-only phone still shows its screens.
            let _ = phone.ledger_mut().settle();
            let asked = show::Asked {
                screen: *screen,
                unit: unit.as_deref(),
                person: person.as_deref(),
                stop: *stop,
            };
            show::show(&phone, &asked, now, as_of.is_some()).map(Some)
        }
        Some(PhoneVerb::Slip { code, unit, item, place, person }) => {
            let mut phone = open(args)?;
            let now = now(args, phone.ledger())?;
            let asked = slip::Asked { code, unit, item, place: place.as_deref(), person: person.as_deref() };
            slip::take(&mut phone, &asked, now).map(Some)
        }
        Some(PhoneVerb::HandOver { file }) => {
            let mut phone = open(args)?;
            let now = now(args, phone.ledger())?;
            let made = phone.hand_over(now)?;
            write_whole(file, &made.bytes, "Every entry stays on this phone. Hand over to another place.")?;
            let text = match made.entries {
                0 => format!("{}: the shop has acknowledged every entry; the file says so.", file.display()),
                n => format!(
                    "{} the shop has not acknowledged, in {}.\n\
                     Signed, not secret. What is handed over stays on this phone too.",
                    counted(n, "entry", "entries"),
                    file.display()
                ),
            };
            Said::new(text, &serde_json::json!({ "file": file, "entries": made.entries, "own": made.own }))
                .map(Some)
        }
        Some(PhoneVerb::TakeIn { file }) => {
            let mut phone = open(args)?;
            let now = now(args, phone.ledger())?;
            let bytes = fs::read(file).map_err(|reason| CommandError::File { path: file.clone(), reason })?;
            let taken = phone.take_in(&bytes, now)?;
            phone.ledger_mut().settle()?;
            let mut lines = Vec::new();
            told(&taken, &mut lines);
            if taken.receipt {
                let counts = exchange::counts(phone.ledger())?;
                lines.push(format!(
                    "The shop's receipt came with it: {} only on this phone.",
                    counted(
                        usize::try_from(counts.on_this_phone).unwrap_or(usize::MAX),
                        "entry is",
                        "entries are"
                    )
                ));
            }
            let json = serde_json::json!({
                "admitted": taken.admitted, "known": taken.known, "waiting": taken.waiting,
                "refused": taken.refused.len(), "receipt": taken.receipt, "placed-again": taken.placed_again,
                "ended-early": taken.ended_early.as_ref().map(ToString::to_string),
            });
            Ok(Some(Said::new(lines.join("\n"), &json)?.in_part(!taken.whole())))
        }
    }
}

fn schema() -> Result<Said, CommandError> {
    let schema = line::schema();
    Said::new(serde_json::to_string_pretty(&schema)?, &schema)
}

/// Which phone this is, and the key the shop compares.
fn who(args: &Phone) -> Result<Said, CommandError> {
    let phone = open(args)?;
    let fingerprint = exchange::PendingDevice::fingerprint_of(phone.ledger().own_key().id());
    let (fleet, name) = (&phone.home().fleet_name, &phone.home().device);
    let text = format!(
        "This is '{name}' of {fleet}.\nIts key: {fingerprint}\n\
         It can enrol, record, show, slip, hand-over and take-in; --help says more."
    );
    Said::new(text, &serde_json::json!({ "fleet": fleet, "name": name, "key": fingerprint }))
}

fn enrol(args: &Phone, file: Option<&Path>, code: Option<&str>, name: &str) -> Result<Said, CommandError> {
    let folder = folder(args)?;
    let seal = FileSeal::new(folder.join(KEY_FILE));
    let now = args.now.unwrap_or_else(clock::now);
    let phone = match (file, code) {
        (Some(file), _) => {
            let bytes =
                fs::read(file).map_err(|reason| CommandError::File { path: file.to_owned(), reason })?;
            Daybook::enrol(folder, &bytes, name, &seal, now)?
        }
        (None, code) => {
            Daybook::enrol_by_code(folder, &ShopCode::from_text(code.unwrap_or_default())?, name, &seal)?
        }
    };
    let fingerprint = exchange::PendingDevice::fingerprint_of(phone.ledger().own_key().id());
    let fleet = &phone.home().fleet_name;
    let text = format!(
        "This is '{name}' of {fleet}. It records from now on, network or not.\n\
         Its key: {fingerprint}\nThe shop lets it in when it hears of it; compare the key there."
    );
    Said::new(text, &serde_json::json!({ "fleet": fleet, "name": name, "key": fingerprint }))
}

/// Records line by line as they come; each id is printed when its entry is durable.
fn record(args: &Phone, json: bool) -> Result<(), CommandError> {
    let mut phone = open(args)?;
    let template =
        phone.ledger().fleet().checklist().map_err(|e| CommandError::Asked(e.to_string()))?.clone();
    let mut recorded = 0usize;
    for (index, text) in std::io::stdin().lock().lines().enumerate() {
        let failed = |reason: String| CommandError::Line { number: index + 1, reason, recorded };
        let text = text.map_err(|e| failed(format!("standard input cannot be read: {}", plain(&e))))?;
        if text.trim().is_empty() {
            continue;
        }
        let id = one(&mut phone, &text, &template, args).map_err(|e| failed(e.to_string()))?;
        recorded += 1;
        let told = if json { serde_json::json!({ "recorded": id }).to_string() } else { id.to_string() };
        out::line(&told)?;
    }
    if recorded == 0 {
        out::aside("sumpbook: no lines came; nothing was recorded. Give one JSON object a line.");
    }
    Ok(())
}

fn one(phone: &mut Daybook, text: &str, template: &Template, args: &Phone) -> Result<EntryId, CommandError> {
    let now = now(args, phone.ledger())?;
    let line = Line::read(text)?;
    if is_shop_only(line.fact.kind()) {
        return Err(CommandError::Asked(
            "only the shop writes this kind: it would be set aside there. Tell the shop instead.".to_owned(),
        ));
    }
    let id = new_id(now).map_err(|e| CommandError::Asked(e.to_string()))?;
    let writer = Writer { now, clock_off_ms: phone.clock_off_ms()?, id };
    phone.ledger_mut().record_line(&line, template, &writer)
}

fn folder(args: &Phone) -> Result<&Path, CommandError> {
    args.folder.as_deref().ok_or_else(|| {
        CommandError::Asked("say which phone, by its folder: sumpbook phone PHONE ...".to_owned())
    })
}

fn open(args: &Phone) -> Result<Daybook, CommandError> {
    let folder = folder(args)?;
    let phone = Daybook::open(folder, &FileSeal::new(folder.join(KEY_FILE)))?;
    if let Some(salvaged) = phone.salvaged() {
        out::aside(&format!(
            "Part of this phone's book can't be read. {} of {} entries are kept, and the damaged file too, as {}. \
             Exchange with the shop: it may hold the others.",
            salvaged.saved,
            salvaged.held,
            salvaged.kept.display()
        ));
    }
    if phone.ledger().fleet().name.is_empty() && !phone.waits_for_its_books()? {
        out::aside(
            "This phone's book holds nothing of its fleet: it was lost. Take in the shop's newest answer before anything is recorded.",
        );
    }
    Ok(phone)
}

/// The moment the phone's clock shows.
fn now(args: &Phone, ledger: &Ledger) -> Result<Stamp, CommandError> {
    match args.now {
        Some(_) if !ledger.fleet().demo => Err(ShopError::ReceivedGiven.into()),
        Some(now) => Ok(now),
        None => Ok(clock::in_zone(clock::now(), ledger.fleet().zone)),
    }
}
