//! `invite` and `take-in`: files to and from phones.

use std::fs;
use std::path::{Path, PathBuf};

use serde::Serialize;
use sumpbook_daybook::exchange::{self, CodeState, PendingDevice, TakenIn};
use sumpbook_daybook::store::StoreError;
use sumpbook_trade::{Stamp, TruckId};

use super::args::{Invite, TakeIn};
use super::found::{hand, open, open_even_empty};
use super::out::{Said, counted};
use super::{CommandError, clock};
use crate::{Shop, ShopError};

/// Writes an invitation.
///
/// # Errors
/// When a unit is unknown or the file cannot be written.
pub(super) fn invite(folder: &Path, args: &Invite) -> Result<Said, CommandError> {
    let mut shop = open(folder)?;
    let now = moment(&shop, args.received)?;
    let trucks: Vec<TruckId> = if args.units.is_empty() {
        shop.ledger.fleet().trucks.keys().copied().collect()
    } else {
        args.units.iter().map(|door| shop.unit(door)).collect::<Result<_, _>>()?
    };
    let bytes = exchange::invite(&mut shop.ledger, &trucks, now, args.days)?;
    write_whole(
        &args.file,
        &bytes,
        "Its code lets nobody in without the file. Write the invitation elsewhere.",
    )?;
    let text = format!(
        "{} holds the beginnings of {}. Its code holds {} and lets one phone in.\n\
         The file is signed, not secret: carry it like a key.",
        args.file.display(),
        counted(trucks.len(), "unit", "units"),
        counted(args.days as usize, "day", "days"),
    );
    Said::new(text, &serde_json::json!({ "file": args.file, "units": trucks.len(), "days": args.days }))
}

#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
struct TakenInJson {
    admitted: usize,
    known: usize,
    waiting: usize,
    refused: Vec<RefusedJson>,
    ended_early: Option<String>,
    waiting_phone: Option<WaitingPhone>,
    accepted: Option<String>,
    answer: Option<PathBuf>,
}

#[derive(Serialize)]
struct RefusedJson {
    entry: Option<sumpbook_trade::EntryId>,
    why: String,
}

#[derive(Serialize)]
struct WaitingPhone {
    name: String,
    fingerprint: String,
}

/// Takes in a file and writes the answer.
///
/// # Errors
/// When the file is none of ours, a phone cannot be accepted, or the answer cannot be written.
pub(super) fn take_in(folder: &Path, args: &TakeIn) -> Result<Said, CommandError> {
    let mut shop = open_even_empty(folder)?;
    let now = moment(&shop, args.received)?;
    let bytes =
        fs::read(&args.file).map_err(|reason| CommandError::File { path: args.file.clone(), reason })?;
    let mut taken = exchange::take_in(&mut shop.ledger, &bytes, now)?;
    let mut lines = Vec::new();
    let mut accepted = None;
    if let Some(fingerprint) = &args.accept {
        let by = args.by.as_deref().map(|name| shop.person(name)).transpose()?;
        let phone = exchange::accept(&mut shop.ledger, fingerprint, by, now)?;
        lines.push(format!(
            "{} is let in. {} had been waiting and {} in the books now.",
            phone.name,
            counted(phone.admitted, "entry", "entries"),
            if phone.admitted == 1 { "is" } else { "are" }
        ));
        // The second reading knows what the first could not let in: told once, as what came in.
        let known = taken.known;
        taken = exchange::take_in(&mut shop.ledger, &bytes, now)?;
        taken.admitted += phone.admitted;
        taken.known = known;
        accepted = Some(phone.name);
    }
    told(&taken, &mut lines);
    let pending = taken.pending.as_ref().filter(|_| accepted.is_none());
    if let Some(device) = pending {
        lines.push(ask_to_accept(device, folder, &args.file));
    }
    let answer = exchange::answer(&mut shop.ledger, &taken, now)?;
    let path = args.answer.clone().unwrap_or_else(|| args.file.with_extension("answer.sump"));
    let answered = (!answer.is_empty()).then_some(path);
    if let Some(path) = &answered {
        let kept = "What the phone's file brought is in the books. Take it in again, with another place for --answer.";
        write_whole(path, &answer, kept)?;
        lines.push(format!("The answer for the way back: {}", path.display()));
    }
    shop.ledger.settle()?;
    let refused = taken
        .refused
        .iter()
        .map(|(entry, reason)| RefusedJson { entry: *entry, why: reason.to_string() })
        .collect();
    let json = TakenInJson {
        admitted: taken.admitted,
        known: taken.known,
        waiting: taken.waiting,
        refused,
        ended_early: taken.ended_early.as_ref().map(ToString::to_string),
        waiting_phone: pending.map(|device| WaitingPhone {
            name: device.name.clone(),
            fingerprint: device.fingerprint.clone(),
        }),
        accepted,
        answer: answered,
    };
    Ok(Said::new(lines.join("\n"), &json)?.in_part(!taken.whole()))
}

/// What became of a file, in sentences.
pub(super) fn told(taken: &TakenIn, lines: &mut Vec<String>) {
    lines.push(format!(
        "{} taken in, {} here already.",
        counted(taken.admitted, "entry", "entries"),
        counted(taken.known, "was", "were")
    ));
    if taken.waiting > 0 {
        lines.push(format!(
            "{} for an earlier file or for the phone to be let in, and then come in by themselves.",
            counted(taken.waiting, "entry waits", "entries wait")
        ));
    }
    let mut reasons: std::collections::BTreeMap<String, usize> = std::collections::BTreeMap::new();
    for (_, reason) in &taken.refused {
        *reasons.entry(reason.to_string()).or_default() += 1;
    }
    for (reason, count) in reasons {
        lines.push(format!(
            "{count} not taken in: {reason}. What came is kept outside the books, as it came."
        ));
    }
    if let Some(end) = &taken.ended_early {
        lines.push(end.to_string());
    }
    if taken.placed_again > 0 {
        lines.push(format!("{} of this phone's own entries placed again.", taken.placed_again));
    }
    if taken.shop_set_back {
        lines.push("The shop was set back to an earlier state: what it lost goes to it again.".to_owned());
    }
    if taken.two_shops {
        lines.push(
            "Two shops answer with one key. Nothing is lost; call the shop before you go on.".to_owned(),
        );
    }
}

fn ask_to_accept(device: &PendingDevice, folder: &Path, file: &Path) -> String {
    let PendingDevice { name, fingerprint, .. } = device;
    match device.code {
        CodeState::Open => format!(
            "A phone that calls itself '{name}' asks to be let in. Its key: {fingerprint}\n\
             Compare it with what that phone says. Only if they are the same:\n  \
             sumpbook --shop {} take-in {} --accept \"{fingerprint}\" --by NAME",
            folder.display(),
            file.display()
        ),
        CodeState::Expired(_) => {
            format!(
                "'{name}' asks to be let in with a code that has run out. It was not let in. Write a new invitation."
            )
        }
        CodeState::Used(_) => {
            format!(
                "'{name}' asks to be let in with a code that another phone has used. It was not let in. Write a new invitation."
            )
        }
        CodeState::Unknown => {
            format!(
                "'{name}' asks to be let in with a code that was not given out here. It was not let in. Ask who handed it over."
            )
        }
    }
}

/// The moment a writing verb counts at.
pub(super) fn moment(shop: &Shop, received: Option<Stamp>) -> Result<Stamp, CommandError> {
    if received.is_some() && !shop.ledger.fleet().demo {
        return Err(ShopError::ReceivedGiven.into());
    }
    Ok(hand(shop, None, received).at)
}

/// Writes a file whole or not at all; `kept` says what stands although it could not be written.
pub(super) fn write_whole(path: &Path, bytes: &[u8], kept: &'static str) -> Result<(), CommandError> {
    let failed = |reason| CommandError::Unwritten { path: path.to_owned(), reason, kept };
    let mut beside = path.as_os_str().to_owned();
    beside.push(".part");
    let beside = PathBuf::from(beside);
    fs::write(&beside, bytes).and_then(|()| fs::rename(&beside, path)).map_err(|reason| {
        // A half-made file beside a failed one would only puzzle whoever finds it.
        let _ = fs::remove_file(&beside);
        failed(reason)
    })
}

/// The ledger of a reading verb: as it is, or as it was known at a moment. Gives the moment too.
pub(super) fn known_at(
    shop: &mut Shop,
    as_of: Option<Stamp>,
) -> Result<(Option<sumpbook_daybook::ledger::Ledger>, Stamp), CommandError> {
    let zone = shop.ledger.fleet().zone;
    match as_of {
        Some(at) => Ok((Some(crate::close::as_of(shop, at)?), clock::in_zone(at, zone))),
        None => {
            // A folder that cannot be written is still read.
            match shop.ledger.settle() {
                Ok(()) => {}
                Err(sumpbook_daybook::ledger::LedgerError::Store(
                    StoreError::ReadOnly(_) | StoreError::Full,
                )) => {}
                Err(other) => return Err(other.into()),
            }
            Ok((None, clock::in_zone(clock::now(), zone)))
        }
    }
}
