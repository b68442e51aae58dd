//! One balance: what was used from one known level to the next (R11).

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::amount::{Millilitres, MlPerHour};
use crate::quantity::Tenths;

/// A moment in the life of a fill.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Moment {
    /// The entry it comes from.
    pub entry: Uuid,
    /// When.
    pub at: DateTime<FixedOffset>,
    /// Running hours of the unit then.
    pub hours: Tenths,
}

/// A closed balance.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Balance {
    /// The level it begins at.
    pub from: Moment,
    /// The pour that closes it.
    pub to: Moment,
    /// Over the middle at the beginning; below zero what was missing.
    pub carried_in: Millilitres,
    /// Poured in between and at the end.
    pub poured: Millilitres,
    /// Over the middle at the end: carried to the next balance.
    pub carried_out: Millilitres,
    /// What two readings of the glass may be off together; `None` when the glass's volume is not known.
    pub error: Option<Millilitres>,
    /// It belongs to a fill that was settling: kept apart from what is usual.
    pub settling: bool,
    /// A hot level was corrected in it.
    pub corrected: bool,
}

impl Balance {
    /// What was used.
    pub fn used(&self) -> Millilitres {
        self.carried_in + self.poured - self.carried_out
    }

    /// The running hours it covers.
    pub fn hours(&self) -> Tenths {
        self.to.hours - self.from.hours
    }

    /// Used in an hour; `None` over no hours.
    pub fn rate(&self) -> Option<MlPerHour> {
        self.used().over(self.hours())
    }

    /// The least and the most it can have been in an hour, from the two readings of the glass.
    pub fn band(&self) -> Option<(MlPerHour, MlPerHour)> {
        let error = self.error?;
        (self.used() - error).over(self.hours()).zip((self.used() + error).over(self.hours()))
    }
}

/// A balance that no pour has closed yet, as far as the last level tells.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct SoFar {
    /// The level it begins at.
    pub from: Moment,
    /// The level it is told at.
    pub to: Moment,
    /// What was used between the two; below zero: the level rose.
    pub used: Millilitres,
    /// What two readings of the glass may be off together; `None` when the glass's volume is not known.
    pub error: Option<Millilitres>,
}

impl SoFar {
    /// Used in an hour; `None` over no hours.
    pub fn rate(&self) -> Option<MlPerHour> {
        self.used.over(self.to.hours - self.from.hours)
    }
}
