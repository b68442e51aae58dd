//! Which compressor oils may meet.

use minicbor::{CborLen, Decode, Encode};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What a compressor oil is made of. Numbers are the wire's: new ones are appended.
#[derive(
    Clone,
    Copy,
    Debug,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Encode,
    Decode,
    CborLen,
    Serialize,
    Deserialize,
    JsonSchema,
)]
#[cbor(index_only)]
#[serde(rename_all = "kebab-case")]
pub enum OilFamily {
    /// Mineral oil.
    #[n(0)]
    Mineral,
    /// Synthetic hydrocarbon.
    #[n(1)]
    SyntheticHydrocarbon,
    /// Ester.
    #[n(2)]
    Ester,
    /// Polyglycol.
    #[n(3)]
    Polyglycol,
    /// A blend of families.
    #[n(4)]
    Blend,
}

impl OilFamily {
    /// All of them, in the order of their numbers.
    pub const ALL: [OilFamily; 5] = [
        OilFamily::Mineral,
        OilFamily::SyntheticHydrocarbon,
        OilFamily::Ester,
        OilFamily::Polyglycol,
        OilFamily::Blend,
    ];
}

/// An oil as a profile or a drum's label tells it. What is not told is `None`.
#[derive(
    Clone,
    Copy,
    Debug,
    Default,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Encode,
    Decode,
    CborLen,
    Serialize,
    Deserialize,
    JsonSchema,
)]
#[serde(default)]
pub struct Oil {
    /// Its family.
    #[n(0)]
    pub family: Option<OilFamily>,
    /// Its viscosity grade (ISO VG, cSt at 40 degC): 46.
    #[n(1)]
    pub grade: Option<u16>,
}

/// What stands between two oils.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Mix {
    /// Same family, same grade.
    Same,
    /// Same family, another grade.
    OtherGrade,
    /// Another family, whatever the grade: the same number is not the same oil.
    OtherFamily,
    /// One of them does not say what it is: no pour.
    Unknown,
}

impl Mix {
    /// Whether it may be poured. A person may pour all the same: then it is recorded and the air locks.
    pub fn may_pour(self) -> bool {
        self == Mix::Same
    }
}

impl Oil {
    /// An oil that says what it is.
    pub fn of(family: OilFamily, grade: u16) -> Oil {
        Oil { family: Some(family), grade: Some(grade) }
    }

    /// An oil by its family and the words of its label. The grade is the label's number, such as the 46 of
    /// `ISO VG 46`; none where it names no number, or more than one.
    pub fn labelled(family: Option<OilFamily>, label: Option<&str>) -> Oil {
        let grade = label.and_then(|label| {
            let mut numbers = label.split(|c: char| !c.is_ascii_digit()).filter(|part| !part.is_empty());
            let one = numbers.next()?.parse().ok();
            if numbers.next().is_some() { None } else { one }
        });
        Oil { family, grade }
    }

    /// What is wrong with oil that was poured into a unit; none where nothing is. What the unit's profile does not
    /// say compares with nothing; what it says and the drum does not, is not known to be the same.
    pub fn poured_wrong(profile: Oil, drum: Oil) -> Option<Mix> {
        let own = profile.family?;
        match (drum.family, profile.grade, drum.grade) {
            (None, _, _) => Some(Mix::Unknown),
            (Some(other), _, _) if own != other => Some(Mix::OtherFamily),
            (Some(_), Some(_), None) => Some(Mix::Unknown),
            (Some(_), Some(own), Some(other)) if own != other => Some(Mix::OtherGrade),
            (Some(_), _, _) => None,
        }
    }

    /// What stands between a unit's oil (its profile) and a drum's. Two blends of one grade count
    /// as the same; the label is all there is to go by.
    pub fn mix(profile: Oil, drum: Oil) -> Mix {
        match (profile, drum) {
            // Another family is known as soon as both families are, grade or no grade.
            (Oil { family: Some(own), .. }, Oil { family: Some(other), .. }) if own != other => {
                Mix::OtherFamily
            }
            (Oil { family: Some(_), grade: Some(own) }, Oil { family: Some(_), grade: Some(other) }) => {
                if own == other { Mix::Same } else { Mix::OtherGrade }
            }
            _ => Mix::Unknown,
        }
    }
}
