//! What the clocks are worked from: services as recorded, the shop's decisions, where the unit stands.

use chrono::{DateTime, FixedOffset, NaiveDate};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::TaskId;
use crate::quantity::Tenths;

/// One task of one service entry. Voided entries are left out by the caller.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ServiceRow {
    /// The entry that says so.
    pub entry: Uuid,
    /// The task done.
    pub task: TaskId,
    /// Running hours at the service, counted from 0.0 through every exchange of meters; `None` if not known.
    pub hours: Option<Tenths>,
    /// The yard's day on which it was done.
    pub day: NaiveDate,
    /// The moment the entry states.
    pub at: DateTime<FixedOffset>,
    /// Whether it names an oil reason: mixed, milky, burnt, or a new fill. Such a service stands by itself
    /// however soon after another it comes (R7).
    pub oil_reason: bool,
    /// Whether it came from old binders or spreadsheets, unsigned.
    pub brought_in: bool,
}

/// What the shop decided about a service entry. Keyed by the entry it is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ServiceDecision {
    /// The same service as other entries, entered twice: the fewer hours and the earlier date stay. It joins the tasks
    /// that they have in common and no others.
    SameService {
        /// The others; empty: the one before it, where it looks like that one (R7).
        with: Vec<Uuid>,
    },
    /// A service of its own, and so is the one before it. Said of the later of the two.
    BothStand,
    /// Not a service of this unit: moves no clock.
    DoesNotCount,
}

/// When a unit began to work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct InService {
    /// The yard's day: calendars of tasks never done run from it.
    pub day: NaiveDate,
    /// What the meter showed. Shown only: hours of tasks never done run from 0.0 on the meter (R1).
    pub hours: Tenths,
}

/// Where a unit stands now.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct UnitHours {
    /// The running hours the due list goes by: the last accepted figure, or the high end of what is not
    /// known exactly (R14). `None` when nothing is known.
    pub hours: Option<Tenths>,
    /// Of an estimate, its likely figure, shown beside.
    pub likely: Option<Tenths>,
    /// Of an estimate, its low figure, shown beside.
    pub low: Option<Tenths>,
    /// The moment of the reading behind it, so that its age can be shown.
    pub as_of: Option<DateTime<FixedOffset>>,
}

/// The service a clock runs from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct LastDone {
    /// The first entry that tells of it.
    pub entry: Uuid,
    /// Running hours at it; the fewest where it was entered twice.
    pub hours: Option<Tenths>,
    /// Its yard day; the earliest where it was entered twice.
    pub day: NaiveDate,
}

/// Two entries that look like one service (R7).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct EnteredTwice {
    /// The earlier of the two.
    pub first: Uuid,
    /// The later one.
    pub second: Uuid,
    /// Whether the shop has said so. Until then it is a question.
    pub settled: bool,
}
