//! What happened (P15), and figures while the air runs.

use sumpbook_trade::record::{Digest, Happened, HappenedWhat, RunningNumbers};
use sumpbook_trade::{EntryId, Figure, Stamp};

use crate::error::PhoneError;
use crate::phone::Phone;
use crate::record::Said;

/// What happened.
#[uniffi::remote(Enum)]
pub enum HappenedWhat {
    /// Somebody was hurt.
    Hurt,
    /// Something spilt.
    Spill,
    /// Something was hit.
    Hit,
    /// Anything else.
    Other,
}

/// What happened, as far as it was told: help comes first, so nothing here is asked for.
#[uniffi::remote(Record)]
pub struct Happened {
    /// What.
    #[uniffi(default)]
    pub what: Option<HappenedWhat>,
    /// When, if not as it was written down.
    #[uniffi(default)]
    pub when: Option<Stamp>,
    /// Where, in words.
    #[uniffi(default)]
    pub place: Option<String>,
    /// How much of what, in words.
    #[uniffi(default)]
    pub how_much: Option<String>,
    /// Who was told, in words.
    #[uniffi(default)]
    pub told: Option<String>,
    /// Photos, by SHA-256.
    #[uniffi(default)]
    pub photos: Vec<Digest>,
}

/// Pressures and temperatures while it runs.
#[uniffi::remote(Record)]
pub struct RunningNumbers {
    /// Minutes since the start.
    #[uniffi(default)]
    pub minutes: Option<u32>,
    /// Pressure under load.
    #[uniffi(default)]
    pub pressure: Option<Figure>,
    /// Pressure when idling.
    #[uniffi(default)]
    pub idle_pressure: Option<Figure>,
    /// Temperature at the air end.
    #[uniffi(default)]
    pub air_end: Option<Figure>,
    /// Temperature of the day.
    #[uniffi(default)]
    pub ambient: Option<Figure>,
}

#[uniffi::export]
impl Phone {
    /// Keeps what happened. It locks nothing, and the shop hears of it at once when there is signal.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_happened(&self, said: Said, happened: Happened) -> Result<EntryId, PhoneError> {
        self.record(said, happened.into())
    }

    /// Keeps pressures and temperatures read while it runs.
    ///
    /// # Errors
    /// As any write.
    pub fn keep_running_numbers(&self, said: Said, numbers: RunningNumbers) -> Result<EntryId, PhoneError> {
        self.record(said, numbers.into())
    }
}
