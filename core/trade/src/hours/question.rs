//! What a person is asked about hour readings (R3).

use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::hint::Hint;

/// Why a person is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum QuestionWhy {
    /// More than the meter can have counted.
    AboveCeiling,
    /// As above, and by now time alone has let a later reading back in: hours may be missing or too many.
    UnansweredJump,
    /// Runs backwards.
    Backwards,
    /// As many readings on one side as on the other.
    Tie,
    /// Two figures of one moment.
    SameMoment,
    /// Later readings outvoted one: shown for a nod.
    OutvotedForNod,
    /// Accepted, but much more than this unit runs in a day.
    UnlikeThisUnit,
    /// Two figures a person let stand contradict each other.
    BothStand,
}

/// Why no run may decide this without a person.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum NeverAlone {
    /// The run lies below every accepted figure of this meter.
    BelowEvery,
    /// Its first step is above the ceiling.
    FirstStepAboveCeiling,
    /// It disputes more than one accepted reading.
    DisputesSeveral,
    /// The accepted reading before it is too old.
    NeighbourTooOld,
    /// It disputes a figure a person let stand.
    PersonSettled,
}

/// One open question. It closes when a person settles every entry of `disputing` (or the standing one
/// it is about), or by itself once a later accepted reading can follow only one side.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Question {
    /// Why it is asked.
    pub why: QuestionWhy,
    /// Entries of the side that counts now, oldest first; empty when there is none.
    pub standing: Vec<Uuid>,
    /// Entries of the side that does not (for [`QuestionWhy::UnlikeThisUnit`]: the reading itself).
    pub disputing: Vec<Uuid>,
    /// Why readings alone may not decide it; `None` where they may.
    pub never_alone: Option<NeverAlone>,
    /// What would explain it, likeliest first; empty where nothing is to explain.
    pub hints: Vec<Hint>,
}
