//! A defect as it comes out: what was said, what it locks, where it stands.

use std::collections::BTreeMap;

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::record::{DefectRef, LockPart, Verdict};

/// One person's answer about the item of a defect.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Answer {
    /// When.
    pub at: DateTime<FixedOffset>,
    /// The entry.
    pub entry: Uuid,
    /// Who.
    pub person: Uuid,
    /// What they said.
    pub said: Said,
}

/// What an answer says.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Said {
    /// OK.
    Ok,
    /// A defect.
    Defect {
        /// What it locks; empty for a note.
        parts: Vec<LockPart>,
        /// In their own words.
        words: String,
    },
}

/// A certificate as it counts.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Certified {
    /// Its entry.
    pub certificate: Uuid,
    /// When; never before the finding it names, whatever the signer's clock showed.
    pub at: DateTime<FixedOffset>,
    /// Who.
    pub by: Uuid,
    /// Repaired, or not needed.
    pub verdict: Verdict,
    /// The work done, or the reason.
    pub words: String,
}

/// A driver's review as it counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Reviewed {
    /// Its entry.
    pub review: Uuid,
    /// When; never before the certificate it names.
    pub at: DateTime<FixedOffset>,
    /// Who.
    pub person: Uuid,
}

/// Where a defect stands.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum DefectState {
    /// Not certified.
    Open,
    /// Certified, and no driver has reviewed that yet: what it locks is still locked.
    AwaitingReview {
        /// The first certificate.
        certified: Certified,
    },
    /// Over.
    Closed {
        /// The certificate that was reviewed.
        certified: Certified,
        /// The review; `None` for a note, which locks nothing and needs none.
        reviewed: Option<Reviewed>,
    },
}

/// The same item again within 30 days of its last certificate.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Repeat {
    /// The defect before.
    pub of: DefectRef,
    /// How that one ended.
    pub certified: Certified,
}

/// One defect: everything said about one item until it was closed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Defect {
    /// Its first finding.
    pub reference: DefectRef,
    /// The checklist's item.
    pub item: String,
    /// Which of several.
    pub place: Option<String>,
    /// When it was first found.
    pub since: DateTime<FixedOffset>,
    /// What it locks, each with the time of the first answer that says so (R4). Empty for a note.
    pub parts: BTreeMap<LockPart, DateTime<FixedOffset>>,
    /// All answers, whoever gave them, in order of time: those that say OK on the same day or while it was
    /// open stand beside the findings.
    pub answers: Vec<Answer>,
    /// Every certificate about it, those overtaken by a later finding too.
    pub certificates: Vec<Certified>,
    /// Where it stands.
    pub state: DefectState,
    /// The defect it repeats.
    pub repeats: Option<Repeat>,
}

/// The defects of a unit.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Defects {
    /// By the time they were first found.
    pub defects: Vec<Defect>,
    /// Certificates whose finding has not come yet; they count when it does.
    pub waiting: Vec<Uuid>,
}

impl Defects {
    /// Defects that lock something and are not certified. While a road one is among them nobody signs to
    /// drive: 49 CFR 396.11(a)(3).
    pub fn not_certified(&self) -> impl Iterator<Item = &Defect> {
        self.defects.iter().filter(|d| !d.parts.is_empty() && d.state == DefectState::Open)
    }

    /// Certificates the next driver has to review before signing (49 CFR 396.13).
    pub fn to_review(&self) -> impl Iterator<Item = (&Defect, &Certified)> {
        self.defects.iter().filter_map(|defect| match &defect.state {
            DefectState::AwaitingReview { certified } => Some((defect, certified)),
            _ => None,
        })
    }
}
