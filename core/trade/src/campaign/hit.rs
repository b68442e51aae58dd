//! Whether a campaign is about a truck or a set.

use serde::{Deserialize, Serialize};

use super::serial::{Within, within};
use crate::record::CampaignSet;

/// Whether a unit is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "hit", content = "why")]
pub enum Hit {
    /// It is.
    Yes,
    /// It is not.
    No,
    /// Its serial does not tell: a person must look.
    Look(LookWhy),
}

/// Why a serial does not tell.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LookWhy {
    /// None is on record.
    NoSerial,
    /// No number stands at its end.
    NoNumber,
    /// It may be one of the range written short, or with a sign in another place.
    OtherText,
}

/// Whether a truck or set of this serial is meant. `looked` is what a person said who looked at it, the newest last.
///
/// A person's "it is meant" holds whatever the serial says; "it is not" settles only what the serial leaves open. So
/// a serial that is put right later is compared again.
pub fn hit(campaign: &CampaignSet, serial: Option<&str>, looked: Option<bool>) -> Hit {
    let compared = match serial.map(str::trim).filter(|serial| !serial.is_empty()) {
        None => Hit::Look(LookWhy::NoSerial),
        Some(serial) => compare(campaign, serial),
    };
    match (looked, compared) {
        (Some(true), _) => Hit::Yes,
        (Some(false), Hit::Look(_)) => Hit::No,
        (_, compared) => compared,
    }
}

fn compare(campaign: &CampaignSet, serial: &str) -> Hit {
    let all: Vec<Within> = campaign.ranges.iter().map(|range| within(range, serial)).collect();
    let any = |what: Within| all.contains(&what);
    if any(Within::Yes) {
        Hit::Yes
    } else if any(Within::OtherText) {
        Hit::Look(LookWhy::OtherText)
    } else if any(Within::NoNumber) {
        Hit::Look(LookWhy::NoNumber)
    } else {
        Hit::No
    }
}
