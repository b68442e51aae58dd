//! Which hours the due list reckons with (R3, "while unsettled").

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use crate::quantity::Tenths;

/// The hours of the unit as far as they are known: never an estimate, always some entry's figure.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct DueHours {
    /// Hours of the unit, carried over all exchanges of meters.
    pub hours: Tenths,
    /// The entry they come from.
    pub entry: Uuid,
    /// When it was read: how old the news is.
    pub at: DateTime<FixedOffset>,
    /// A person has yet to choose between figures, and this is the higher of those not above the
    /// ceiling: the safe side for a service.
    pub higher_of_disputed: bool,
    /// An unexplained jump lies before it: hours may be missing, or too many.
    pub across_unanswered_jump: bool,
}
