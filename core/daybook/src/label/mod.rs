//! What the shop prints to be scanned: a unit's door tag and a drum's label. Plain text, so that any reader of QR codes
//! shows what it says, and short, so that its squares stay coarse under dirt:
//!
//! ```text
//! SUMPBOOK:UNIT:5KQ3T2AA:N7VXC4PD:TH-07       fleet, truck, door number
//! SUMPBOOK:OIL:MINERAL:ISO VG 46              family, grade as the drum's label has it
//! ```
//!
//! Fleet and truck are named by the first 5 bytes of a SHA-256, in base32: a door number alone is also another
//! fleet's, or that of a truck that was sold. A tag says which unit is meant and proves nothing.

mod scan;

use data_encoding::BASE32_NOPAD;
use sha2::{Digest, Sha256};
use sumpbook_trade::{FleetId, OilFamily, TruckId};

pub use scan::{DoorScan, NotADrum, NotAUnit, door_scan, drum_scan};

/// What every text of ours begins with.
const OURS: &str = "SUMPBOOK";
/// Characters of a text that can be one of ours; a door number or a grade is far shorter.
const MOST_TEXT: usize = 200;

/// Names a fleet, or a truck of it, on a tag: 8 letters and digits.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mark(String);

impl Mark {
    /// A fleet's.
    pub fn of_fleet(fleet: FleetId) -> Mark {
        Mark::of(&[b"fleet", &fleet.bytes()])
    }

    /// A truck's.
    pub fn of_truck(fleet: FleetId, truck: TruckId) -> Mark {
        Mark::of(&[b"truck", &fleet.bytes(), &truck.bytes()])
    }

    fn of(parts: &[&[u8]]) -> Mark {
        let hash: [u8; 32] =
            parts.iter().fold(Sha256::new(), |hash, part| hash.chain_update(part)).finalize().into();
        let [a, b, c, d, e, ..] = hash;
        Mark(BASE32_NOPAD.encode(&[a, b, c, d, e]))
    }
}

/// A printed label.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Label {
    /// On a truck's door.
    Door {
        /// Whose.
        fleet: Mark,
        /// Which truck of theirs.
        truck: Mark,
        /// Its number when the tag was printed.
        door: String,
    },
    /// On a drum of compressor oil.
    Drum {
        /// Its family; none when a newer version of this program names one that this one does not know.
        family: Option<OilFamily>,
        /// Its grade, such as `ISO VG 46`.
        grade: Option<String>,
    },
}

impl Label {
    /// A unit's door tag.
    pub fn of_unit(fleet: FleetId, truck: TruckId, door: &str) -> Label {
        Label::Door {
            fleet: Mark::of_fleet(fleet),
            truck: Mark::of_truck(fleet, truck),
            door: door.to_owned(),
        }
    }

    /// The text of its code.
    pub fn to_text(&self) -> String {
        match self {
            Label::Door { fleet, truck, door } => format!("{OURS}:UNIT:{}:{}:{door}", fleet.0, truck.0),
            Label::Drum { family, grade } => {
                let family = family.map_or("", word);
                format!("{OURS}:OIL:{family}:{}", grade.as_deref().unwrap_or_default())
            }
        }
    }

    /// Reads a text; none for everything that is not one of ours.
    pub fn from_text(text: &str) -> Option<Label> {
        let text = text.trim();
        if text.len() > MOST_TEXT || text.chars().any(char::is_control) {
            return None;
        }
        let (ours, rest) = text.split_once(':')?;
        let (kind, rest) = rest.split_once(':')?;
        let (first, rest) = rest.split_once(':')?;
        if !ours.eq_ignore_ascii_case(OURS) {
            return None;
        }
        let mark = |text: &str| {
            let text = text.trim().to_ascii_uppercase();
            BASE32_NOPAD.decode(text.as_bytes()).ok().filter(|bytes| bytes.len() == 5).map(|_| Mark(text))
        };
        let said = |text: &str| Some(text.trim().to_owned()).filter(|text| !text.is_empty());
        match kind.to_ascii_uppercase().as_str() {
            "UNIT" => {
                let (truck, door) = rest.split_once(':')?;
                Some(Label::Door { fleet: mark(first)?, truck: mark(truck)?, door: said(door)? })
            }
            "OIL" => {
                let family = OilFamily::ALL.into_iter().find(|f| word(*f).eq_ignore_ascii_case(first.trim()));
                Some(Label::Drum { family, grade: said(rest) })
            }
            _ => None,
        }
    }
}

/// A family on a label. Capitals: a QR code packs them closer.
fn word(family: OilFamily) -> &'static str {
    match family {
        OilFamily::Mineral => "MINERAL",
        OilFamily::SyntheticHydrocarbon => "SYNTHETIC-HYDROCARBON",
        OilFamily::Ester => "ESTER",
        OilFamily::Polyglycol => "POLYGLYCOL",
        OilFamily::Blend => "BLEND",
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn fleet() -> FleetId {
        FleetId::from_bytes([3; 16])
    }

    #[test]
    fn what_is_printed_is_read_also_in_small_letters() {
        let tag = Label::of_unit(fleet(), TruckId::from_bytes([7; 16]), "TH-07");
        let text = tag.to_text();
        assert!(text.starts_with("SUMPBOOK:UNIT:") && text.ends_with(":TH-07"), "{text}");
        // 50 characters of these are the most that a code of 33 squares holds with a third of them gone.
        assert!(text.len() <= 50, "{text}");
        assert_eq!(Label::from_text(&format!(" {text}\n")), Some(tag));
        for family in OilFamily::ALL {
            let drum = Label::Drum { family: Some(family), grade: Some("ISO VG 46".to_owned()) };
            assert!(drum.to_text().len() <= 50, "{}", drum.to_text());
            assert_eq!(Label::from_text(&drum.to_text()), Some(drum.clone()));
        }
        let small = Label::from_text("sumpbook:oil:polyglycol: ISO VG 46");
        let grade = Some("ISO VG 46".to_owned());
        assert_eq!(small, Some(Label::Drum { family: Some(OilFamily::Polyglycol), grade }));
    }

    #[test]
    fn a_door_number_may_hold_what_parts_the_text() {
        let tag = Label::of_unit(fleet(), TruckId::from_bytes([7; 16]), "Ñ 7:b");
        assert_eq!(Label::from_text(&tag.to_text()), Some(tag));
    }

    #[test]
    fn a_family_of_a_later_version_is_none_and_no_other() {
        let read = Label::from_text("SUMPBOOK:OIL:WAX:ISO VG 46");
        assert_eq!(read, Some(Label::Drum { family: None, grade: Some("ISO VG 46".to_owned()) }));
    }

    #[test]
    fn two_trucks_and_two_fleets_are_not_named_alike() {
        let (one, two) = (TruckId::from_bytes([7; 16]), TruckId::from_bytes([8; 16]));
        assert_ne!(Mark::of_truck(fleet(), one), Mark::of_truck(fleet(), two));
        let other = FleetId::from_bytes([4; 16]);
        assert_ne!(Mark::of_fleet(fleet()), Mark::of_fleet(other));
        assert_ne!(Mark::of_truck(fleet(), one), Mark::of_truck(other, one));
    }

    proptest! {
        #[test]
        fn any_text_is_read_or_is_none_of_ours(text in "\\PC*") {
            let _ = Label::from_text(&text);
            let _ = Label::from_text(&format!("SUMPBOOK:UNIT:{text}"));
            let _ = Label::from_text(&format!("SUMPBOOK:OIL:{text}:{text}"));
        }
    }
}
