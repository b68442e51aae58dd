//! `init` and `register`: a fleet from nothing.

use std::fs;
use std::io::Read;
use std::path::Path;

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_trade::clock::Programme;
use sumpbook_trade::day::DayStatus;
use sumpbook_trade::record::{Role, SetProfile};
use sumpbook_trade::{Features, PersonId, Stamp, Tenths};

use super::args::{FromLines, Init};
use super::out::Said;
use super::{CommandError, clock};
use crate::{Hand, InitOptions, NewPerson, NewSet, NewTruck, Shop};

/// One line that `register` reads.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(tag = "register", rename_all = "kebab-case", rename_all_fields = "kebab-case", deny_unknown_fields)]
pub(super) enum Registration {
    /// Someone of the fleet.
    Person {
        /// Name.
        name: String,
        /// What they do.
        role: Role,
        /// No longer here.
        #[serde(default)]
        gone: bool,
    },
    /// A unit: its truck, and the compressor set on it.
    Unit {
        /// Door number.
        door: String,
        /// Serial of the chassis.
        #[serde(default)]
        serial: Option<String>,
        /// Plate.
        #[serde(default)]
        plate: Option<String>,
        /// What it has.
        features: Features,
        /// In service since this day.
        in_service: NaiveDate,
        /// Compressor hours on that day.
        in_service_hours: Tenths,
        /// Serial of the compressor set.
        #[serde(default)]
        set_serial: Option<String>,
        /// What is particular to the set.
        #[serde(default)]
        profile: Option<SetProfile>,
    },
    /// What a unit does from a day on.
    Status {
        /// Door number.
        unit: String,
        /// From this day.
        from: NaiveDate,
        /// What it does.
        status: DayStatus,
        /// Expected out from this time of the yard, such as 07:00.
        #[serde(default)]
        expected: Option<chrono::NaiveTime>,
    },
    /// A programme of services.
    Programme {
        /// Door number; every unit without one of its own when left out.
        #[serde(default)]
        unit: Option<String>,
        /// The programme.
        programme: Programme,
    },
}

/// Makes a shop.
///
/// # Errors
/// As [`Shop::init`].
pub(super) fn init(folder: &Path, args: &Init) -> Result<Said, CommandError> {
    let now = args.received.unwrap_or_else(clock::now);
    let options = InitOptions { name: args.name.clone(), zone: args.zone.clone(), demo: args.demo, now };
    let shop = Shop::init(folder, &options)?;
    let key = fingerprint(&shop.ledger.root().shop.bytes());
    let text = format!(
        "{} has a shop in {}.\nThe shop's key: {key}\nNext: `sumpbook register` people and units, then `sumpbook invite` a phone.\n\
         The checklist and the programme are common practice until you set your own.",
        args.name,
        folder.display(),
    );
    Said::new(text, &serde_json::json!({ "fleet": shop.ledger.root().fleet, "shop-key": key }))
}

/// Enters people, units, programmes.
///
/// # Errors
/// At the first line that does not read or cannot be entered; those before it are entered.
pub(super) fn register(folder: &Path, args: &FromLines) -> Result<Said, CommandError> {
    let mut shop = Shop::open(folder)?;
    let text = read_lines(args)?;
    let mut entered = 0;
    for (index, line) in text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty()) {
        let result = serde_json::from_str(line)
            .map_err(|e| CommandError::Asked(e.to_string()))
            .and_then(|registration| enter(&mut shop, registration, args.received));
        result.map_err(|e| CommandError::Line {
            number: index + 1,
            reason: e.to_string(),
            recorded: entered,
        })?;
        entered += 1;
    }
    Said::new(format!("{entered} entered."), &serde_json::json!({ "entered": entered }))
}

fn enter(shop: &mut Shop, registration: Registration, received: Option<Stamp>) -> Result<(), CommandError> {
    let hand = hand(shop, None, received);
    match registration {
        Registration::Person { name, role, gone } => {
            shop.add_person(NewPerson { name, role, gone }, &hand)?;
        }
        Registration::Unit {
            door,
            serial,
            plate,
            features,
            in_service,
            in_service_hours,
            set_serial,
            profile,
        } => {
            let truck = shop
                .add_truck(NewTruck { door, serial, plate, features, in_service, in_service_hours }, &hand)?;
            let profile = profile.unwrap_or(SetProfile {
                delivery: None,
                glass: None,
                oil_family: None,
                oil_grade: None,
                weights: Vec::new(),
            });
            shop.add_set(NewSet { serial: set_serial, on: Some(truck), profile }, &hand)?;
        }
        Registration::Status { unit, from, status, expected } => {
            let truck = shop.unit(&unit)?;
            let minute = expected.map(|time| {
                use chrono::Timelike;
                u16::try_from(time.num_seconds_from_midnight() / 60).unwrap_or(0)
            });
            shop.set_day_status(truck, from, status, minute, &hand)?;
        }
        Registration::Programme { unit, programme } => {
            let truck = unit.map(|door| shop.unit(&door)).transpose()?;
            shop.set_programme(truck, programme, &hand)?;
        }
    }
    Ok(())
}

/// Whoever writes at the shop, at the moment that counts.
pub(super) fn hand(shop: &Shop, person: Option<PersonId>, received: Option<Stamp>) -> Hand {
    let at = received.unwrap_or_else(|| clock::in_zone(clock::now(), shop.ledger.fleet().zone));
    Hand { person, at, received }
}

/// The lines of a file, or of standard input.
pub(super) fn read_lines(args: &FromLines) -> Result<String, CommandError> {
    match &args.file {
        Some(path) => {
            fs::read_to_string(path).map_err(|reason| CommandError::File { path: path.clone(), reason })
        }
        None => {
            let mut text = String::new();
            std::io::stdin().lock().read_to_string(&mut text)?;
            Ok(text)
        }
    }
}

/// A key as people compare it: its id, in pairs.
pub(super) fn fingerprint(key: &[u8; 32]) -> String {
    match sumpbook_daybook::gate::PublicKey::from_bytes(key) {
        Ok(key) => key.id().0.iter().map(|byte| format!("{byte:02X}")).collect::<Vec<_>>().join(" "),
        Err(_) => "not a key".to_owned(),
    }
}
