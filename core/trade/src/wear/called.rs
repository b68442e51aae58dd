//! Oil whose look calls the service now, whatever the clocks say.

use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use crate::record::OilLook;

/// Why the oil calls for its service.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum WhyCalled {
    /// Another family was poured into it.
    WrongOil,
    /// Water in it.
    Milky,
    /// It was burnt.
    Burnt,
}

/// What was seen of the oil, or what went into it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OilSeen {
    /// The entry that says so.
    pub entry: Uuid,
    /// When.
    pub at: DateTime<FixedOffset>,
    /// What; `None` for a look that calls nothing.
    pub why: Option<WhyCalled>,
}

impl WhyCalled {
    /// Whether a look calls the service. Foam is looked at again after ten minutes before anything is called,
    /// and dark oil asks for a sample: neither calls by itself.
    pub fn of_look(look: OilLook) -> Option<WhyCalled> {
        match look {
            OilLook::Milky => Some(WhyCalled::Milky),
            OilLook::Burnt => Some(WhyCalled::Burnt),
            OilLook::Clear | OilLook::Dark | OilLook::Foaming => None,
        }
    }
}

/// A service that changed the oil.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OilChange {
    /// When.
    pub at: DateTime<FixedOffset>,
}

/// The oil calls for its service.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Called {
    /// Why: the first that was seen, and of one moment the first of the list.
    pub why: WhyCalled,
    /// Since when.
    pub since: DateTime<FixedOffset>,
    /// The entry that says so.
    pub entry: Uuid,
}

/// Whether the oil calls for its service: the first sight of bad oil since it was last changed. Clear oil seen
/// later takes nothing back; only a service does (R6).
pub fn called_now(seen: &[OilSeen], changes: &[OilChange]) -> Option<Called> {
    let since = changes.iter().map(|change| change.at).max();
    let bad = seen.iter().filter(|one| since.is_none_or(|since| one.at > since));
    bad.filter_map(|one| Some(Called { why: one.why?, since: one.at, entry: one.entry }))
        .min_by_key(|called| (called.since, called.why, called.entry))
}
