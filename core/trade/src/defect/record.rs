//! What people recorded about a defect.

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// What a defect takes out of use.
///
/// As text `road`, `air`, or `outlet/` with the outlet's name.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(into = "String", from = "String")]
pub enum LockPart {
    /// The truck is not to be driven.
    Road,
    /// The compressor is not to be started.
    Air,
    /// One outlet is not to be used, by the name the unit's profile gives it.
    Outlet(String),
}

impl From<LockPart> for String {
    fn from(part: LockPart) -> String {
        match part {
            LockPart::Road => "road".to_owned(),
            LockPart::Air => "air".to_owned(),
            LockPart::Outlet(name) => format!("outlet/{name}"),
        }
    }
}

impl From<String> for LockPart {
    fn from(text: String) -> LockPart {
        match text.as_str() {
            "road" => LockPart::Road,
            "air" => LockPart::Air,
            other => LockPart::Outlet(other.strip_prefix("outlet/").unwrap_or(other).to_owned()),
        }
    }
}

/// One defect, named by one of the findings it is made of.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct DefectRef {
    /// The entry with the finding.
    pub entry: Uuid,
    /// The checklist's item.
    pub item: String,
    /// Which of several (a wheel, a hose tag); `None` where there is one.
    pub place: Option<String>,
}

/// Someone found something wrong: a walk's answer, or an entry that finds by itself (a wrong oil poured).
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Finding {
    /// When it was answered.
    pub at: DateTime<FixedOffset>,
    /// The entry.
    pub entry: Uuid,
    /// The checklist's item.
    pub item: String,
    /// Which of several.
    pub place: Option<String>,
    /// What it locks; empty for a note.
    pub parts: Vec<LockPart>,
    /// Who found it.
    pub person: Uuid,
    /// In their own words.
    pub words: String,
}

/// Someone answered OK.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct OkAnswer {
    /// When it was answered.
    pub at: DateTime<FixedOffset>,
    /// The entry.
    pub entry: Uuid,
    /// The checklist's item.
    pub item: String,
    /// Which of several.
    pub place: Option<String>,
    /// Who answered.
    pub person: Uuid,
}

/// What the shop certifies: the two ways 49 CFR 396.11(a)(3)(ii) knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Verdict {
    /// Repaired.
    Repaired,
    /// Repair not needed.
    NotNeeded,
}

/// A repair certificate.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Certificate {
    /// When it was signed.
    pub at: DateTime<FixedOffset>,
    /// The entry.
    pub entry: Uuid,
    /// The defect, by any of its findings.
    pub defect: DefectRef,
    /// Repaired, or not needed.
    pub verdict: Verdict,
    /// Who certifies.
    pub by: Uuid,
    /// The work done, or the reason.
    pub words: String,
}

/// A driver's review of certificates before driving (49 CFR 396.13).
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Review {
    /// When it was signed.
    pub at: DateTime<FixedOffset>,
    /// The entry.
    pub entry: Uuid,
    /// The driver.
    pub person: Uuid,
    /// The certificates reviewed, by their entries. One that is not named is not reviewed.
    pub seen: Vec<Uuid>,
}
