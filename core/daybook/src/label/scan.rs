//! What a scanned text is, where a door tag or a drum's label was wanted: nothing is opened or filled in by guessing.

use serde::{Deserialize, Serialize};
use sumpbook_trade::{FleetId, OilFamily, TruckId};

use super::{Label, Mark};
use crate::exchange::ShopCode;
use crate::fleet::Fleet;

/// Why a scanned text opens no unit, for the texts `scan-...`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NotAUnit {
    /// The door tag of another fleet.
    OtherFleet,
    /// A door tag of this fleet, of a truck this phone does not know.
    NotHere,
    /// A door tag of this fleet, of another truck than the one that bears the number now.
    OtherTruck,
    /// A drum's label.
    DrumLabel,
    /// The shop's code for a new phone.
    ShopCode,
    /// None of ours.
    NoTag,
}

/// A scanned text, where a door tag was wanted.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct DoorScan {
    /// The unit that is meant.
    pub unit: Option<TruckId>,
    /// Why none is.
    pub no: Option<NotAUnit>,
    /// The door number on it, or the beginning of what it says.
    pub says: Option<String>,
}

/// Why a scanned text says nothing of a drum; the top-up stays as it was.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NotADrum {
    /// A unit's door tag.
    DoorTag,
    /// The shop's code for a new phone.
    ShopCode,
}

/// Of a text that is none of ours the beginning tells what it is.
const SHOWN: usize = 40;

/// The unit a scanned text means. A tag somebody made by hand, with nothing but a door number on it, is one.
pub fn door_scan(id: FleetId, fleet: &Fleet, text: &str) -> DoorScan {
    let no = |no, says: Option<String>| DoorScan { unit: None, no: Some(no), says };
    match Label::from_text(text) {
        Some(Label::Door { fleet: whose, .. }) if whose != Mark::of_fleet(id) => {
            no(NotAUnit::OtherFleet, None)
        }
        Some(Label::Door { truck, door, .. }) => {
            let meant = fleet.trucks.keys().find(|known| Mark::of_truck(id, **known) == truck);
            match meant {
                Some(unit) => DoorScan { unit: Some(*unit), no: None, says: Some(fleet.door(*unit)) },
                None if fleet.truck_by_door(&door).is_some() => no(NotAUnit::OtherTruck, Some(door)),
                None => no(NotAUnit::NotHere, Some(door)),
            }
        }
        Some(Label::Drum { .. }) => no(NotAUnit::DrumLabel, None),
        None if ShopCode::from_text(text).is_ok() => no(NotAUnit::ShopCode, None),
        None => {
            let said = text.trim();
            let own = fleet.trucks.values().find(|truck| truck.door.to_lowercase() == said.to_lowercase());
            match own {
                Some(truck) => DoorScan { unit: Some(truck.truck), no: None, says: Some(truck.door.clone()) },
                None => no(NotAUnit::NoTag, Some(shown(said))),
            }
        }
    }
}

/// What a scanned text says of the drum. A code that is none of ours says nothing: an unknown drum.
///
/// # Errors
/// Why it is about no drum at all.
pub fn drum_scan(text: &str) -> Result<(Option<OilFamily>, Option<String>), NotADrum> {
    match Label::from_text(text) {
        Some(Label::Drum { family, grade }) => Ok((family, grade)),
        Some(Label::Door { .. }) => Err(NotADrum::DoorTag),
        None if ShopCode::from_text(text).is_ok() => Err(NotADrum::ShopCode),
        None => Ok((None, None)),
    }
}

fn shown(text: &str) -> String {
    text.chars().filter(|c| !c.is_control()).take(SHOWN).collect()
}
