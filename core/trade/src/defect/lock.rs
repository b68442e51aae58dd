//! What is locked out, since when, and what was used against it.

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};

use super::outcome::{Defect, DefectState};
use super::record::{DefectRef, LockPart};
use crate::campaign::CAMPAIGN_ITEM;
use crate::day::{Use, UseKind};

/// Road, air or one outlet out of use because of one defect, or road or air because of a maker's campaign.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct LockOut {
    /// What is locked.
    pub part: LockPart,
    /// The worst answer's own time, whoever knew of it then (R4).
    pub since: DateTime<FixedOffset>,
    /// The defect; of a campaign its entry, [`CAMPAIGN_ITEM`] and its name.
    pub because: DefectRef,
    /// When the shop certified it; it stays locked.
    pub certified: Option<DateTime<FixedOffset>>,
    /// When the next driver's review ended it; `None` while it stands.
    pub ended: Option<DateTime<FixedOffset>>,
}

impl LockOut {
    /// Whether it stood at a moment. Its own first moment is not yet "after"; its last is free.
    pub fn stands_at(&self, at: DateTime<FixedOffset>) -> bool {
        self.since < at && self.ended.is_none_or(|ended| at < ended)
    }

    /// Whether a maker's campaign locks, and no defect. No certificate ends such a lock, only the work does.
    pub fn is_of_campaign(&self) -> bool {
        self.because.item == CAMPAIGN_ITEM
    }

    /// Whether a use goes against what it locks: driving against road, starting against air. An outlet may
    /// be shut while the compressor runs, so starting does not go against it.
    pub fn forbids(&self, what: UseKind) -> bool {
        matches!((&self.part, what), (LockPart::Road, UseKind::Drive) | (LockPart::Air, UseKind::Start))
    }
}

/// Every lock-out of these defects, ended or not, by part and time.
pub fn lock_outs(defects: &[Defect]) -> Vec<LockOut> {
    let mut locks: Vec<LockOut> = defects
        .iter()
        .flat_map(|defect| {
            let (certified, ended) = match &defect.state {
                DefectState::Open => (None, None),
                DefectState::AwaitingReview { certified } => (Some(certified.at), None),
                DefectState::Closed { certified, reviewed } => (Some(certified.at), reviewed.map(|r| r.at)),
            };
            defect.parts.iter().map(move |(part, since)| LockOut {
                part: part.clone(),
                since: *since,
                because: defect.reference.clone(),
                certified,
                ended,
            })
        })
        .collect();
    locks.sort();
    locks
}

/// A use against a lock-out (R12).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UseAgainst {
    /// The lock-out.
    pub lock: LockOut,
    /// The start or the drive.
    pub used: Use,
    /// Whether whoever used it could have known. `None` until judged: it is read from what each phone held,
    /// which is not known here. It is said beside the use and never takes it off the list.
    pub could_know: Option<bool>,
}

/// Each start or drive after a lock-out's own time and before its end, whoever knew, in order of time. A use
/// against two lock-outs is there twice.
pub fn uses_against(locks: &[LockOut], uses: &[Use]) -> Vec<UseAgainst> {
    let mut found: Vec<UseAgainst> = locks
        .iter()
        .flat_map(|lock| {
            uses.iter()
                .filter(|used| lock.forbids(used.what) && lock.stands_at(used.at))
                .map(|used| UseAgainst { lock: lock.clone(), used: *used, could_know: None })
        })
        .collect();
    found.sort_by(|a, b| (a.used.at, a.used.entry, &a.lock).cmp(&(b.used.at, b.used.entry, &b.lock)));
    found
}
