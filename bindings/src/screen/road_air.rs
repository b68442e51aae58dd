//! Road and air, each by itself.

use sumpbook_daybook::screen::{LockState, LockWhy, PartNow, RoadAir};
use sumpbook_trade::Stamp;
use sumpbook_trade::defect::LockPart;

/// Road and air of a unit.
#[uniffi::remote(Record)]
pub struct RoadAir {
    /// The road.
    pub road: PartNow,
    /// The air.
    pub air: PartNow,
    /// Outlets that are locked, by name.
    pub outlets: Vec<PartNow>,
    /// How many outlets the unit has by name.
    pub outlets_of: u32,
}

/// One part of a unit.
#[uniffi::remote(Record)]
pub struct PartNow {
    /// Which.
    pub part: LockPart,
    /// What is on record.
    pub state: LockState,
    /// The earliest lock's own time.
    pub since: Option<Stamp>,
    /// Why, earliest first.
    pub why: Vec<LockWhy>,
}

/// What is on record. Never "safe": no lock on record says only that.
#[uniffi::remote(Enum)]
pub enum LockState {
    /// No lock on record.
    NoLockOnRecord,
    /// Certified; locked until the next driver reviews that.
    AwaitingReview,
    /// Locked.
    Locked,
}

/// One reason of a lock.
#[uniffi::remote(Record)]
pub struct LockWhy {
    /// The row of the defect: the same id as on the last report.
    pub id: String,
    /// The checklist's item.
    pub item: String,
    /// Its place.
    pub place: Option<String>,
    /// Key of the word chosen first.
    pub word: Option<String>,
    /// Who said it first.
    pub by: Option<String>,
}
