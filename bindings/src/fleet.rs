//! Which phone this is, and who and what it knows.

use chrono::NaiveDate;
use sumpbook_daybook::exchange::PendingDevice;
use sumpbook_trade::record::{OnCall, Role};
use sumpbook_trade::{Feature, PersonId, TruckId};

use crate::error::PhoneError;
use crate::phone::Phone;

/// Which phone this is.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct AboutPhone {
    /// The fleet's name.
    pub fleet: String,
    /// What this phone is called.
    pub device: String,
    /// Where the hub stands, `host:port`; none while files are the only way.
    pub hub: Option<String>,
    /// Its key, to be compared with what the shop shows: `4F 1A 9C 02 77 E0 B3 61`.
    pub key: String,
    /// It began with a code, and its books have not come yet.
    pub waits_for_its_books: bool,
    /// Its book was found damaged when it was opened.
    pub salvaged: Option<Salvage>,
}

/// What was saved out of a damaged book.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct Salvage {
    /// Where the damaged file is kept.
    pub kept: String,
    /// Entries it says it held.
    pub held: i64,
    /// Entries that were taken over.
    pub saved: i64,
}

/// Who and what this phone knows.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct FleetHere {
    /// Name of the fleet.
    pub name: String,
    /// The yard's zone, such as `America/Denver`.
    pub zone: String,
    /// An invented fleet.
    pub demo: bool,
    /// People, by their names.
    pub people: Vec<PersonHere>,
    /// Units, by their door numbers.
    pub units: Vec<UnitHere>,
    /// Whom the shop says to call, first to last.
    pub on_call: Vec<OnCall>,
    /// The number for help when somebody is hurt.
    pub emergency: String,
}

/// Somebody to be called.
#[uniffi::remote(Record)]
pub struct OnCall {
    /// Who, or which desk.
    pub name: String,
    /// The number, as it is dialled.
    pub number: String,
}

/// The number where the shop has set none: North America's.
const EMERGENCY: &str = "911";

/// Someone of the fleet.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct PersonHere {
    /// Who.
    pub id: PersonId,
    /// Name.
    pub name: String,
    /// What they do.
    pub role: Role,
    /// No longer here.
    pub gone: bool,
    /// Is learning: signs with a trainer.
    pub learning: bool,
    /// Somebody who is learning may sign with this person.
    pub may_train: bool,
}

/// A unit.
#[derive(Clone, Debug, PartialEq, uniffi::Record)]
pub struct UnitHere {
    /// Which.
    pub id: TruckId,
    /// Door number.
    pub door: String,
    /// What it has.
    pub features: Vec<Feature>,
    /// Its outlets by name.
    pub outlets: Vec<String>,
    /// Its plate.
    pub plate: Option<String>,
    /// Serial number of the chassis.
    pub serial: Option<String>,
    /// Serial number of the compressor set on it.
    pub set_serial: Option<String>,
    /// The last day on which its annual inspection holds, when the shop said so.
    pub annual_inspection: Option<NaiveDate>,
}

#[uniffi::export]
impl Phone {
    /// Which phone this is.
    ///
    /// # Errors
    /// As any read.
    pub fn about(&self) -> Result<AboutPhone, PhoneError> {
        self.read(|book, _| {
            let home = book.home();
            Ok(AboutPhone {
                fleet: home.fleet_name.clone(),
                device: home.device.clone(),
                hub: home.hub.clone(),
                key: PendingDevice::fingerprint_of(book.ledger().own_key().id()),
                waits_for_its_books: book.waits_for_its_books()?,
                salvaged: book.salvaged().map(|salvaged| Salvage {
                    kept: salvaged.kept.display().to_string(),
                    held: salvaged.held,
                    saved: salvaged.saved,
                }),
            })
        })
    }

    /// The people and units this phone knows.
    ///
    /// # Errors
    /// As any read.
    pub fn fleet(&self) -> Result<FleetHere, PhoneError> {
        self.read(|book, _| {
            let fleet = book.ledger().fleet();
            let mut people: Vec<PersonHere> = fleet
                .people
                .values()
                .map(|person| PersonHere {
                    id: person.person,
                    name: person.name.clone(),
                    role: person.role,
                    gone: person.gone,
                    learning: person.role == Role::Trainee,
                    may_train: !person.gone && person.role != Role::Trainee,
                })
                .collect();
            people.sort_by(|a, b| a.name.cmp(&b.name));
            let mut units: Vec<UnitHere> = fleet
                .trucks
                .values()
                .map(|truck| UnitHere {
                    id: truck.truck,
                    door: truck.door.clone(),
                    features: Feature::ALL.into_iter().filter(|has| truck.features.has(*has)).collect(),
                    outlets: truck.features.valves.clone(),
                    plate: truck.plate.clone(),
                    serial: truck.serial.clone(),
                    set_serial: fleet.set_on(truck.truck).and_then(|set| set.serial.clone()),
                    annual_inspection: truck.annual_inspection,
                })
                .collect();
            units.sort_by(|a, b| a.door.cmp(&b.door));
            let zone = fleet.zone.name().to_owned();
            let emergency = fleet.says.emergency.clone().unwrap_or_else(|| EMERGENCY.to_owned());
            let on_call = fleet.says.on_call.clone();
            let name = fleet.name.clone();
            Ok(FleetHere { name, zone, demo: fleet.demo, people, units, on_call, emergency })
        })
    }
}
