//! Whether a balance says that too much is used (R11): only when it can say so.

use serde::{Deserialize, Serialize};

use super::amount::MlPerHour;
use super::balance::Balance;
use super::level::OilNumbers;

/// What a balance says of a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum OilVerdict {
    /// The whole band lies under the limit or at it.
    Under,
    /// The whole band lies over it.
    Over,
    /// Nothing yet; the figure is shown with its reason.
    None(NoVerdict),
}

/// Why there is no verdict.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoVerdict {
    /// It covers too few running hours.
    TooFewHours,
    /// The limit lies within what two readings of the glass may be off.
    BandTooWide,
    /// The glass's volume is not known, so neither is the band.
    GlassUnknown,
    /// The fill was still settling.
    Settling,
}

/// What a balance says of `limit`.
pub fn verdict(balance: &Balance, limit: MlPerHour, numbers: &OilNumbers) -> OilVerdict {
    if balance.settling {
        return OilVerdict::None(NoVerdict::Settling);
    }
    if balance.hours().as_hours() < numbers.least_hours {
        return OilVerdict::None(NoVerdict::TooFewHours);
    }
    match balance.band() {
        None => OilVerdict::None(NoVerdict::GlassUnknown),
        Some((low, _)) if low > limit => OilVerdict::Over,
        Some((_, high)) if high <= limit => OilVerdict::Under,
        Some(_) => OilVerdict::None(NoVerdict::BandTooWide),
    }
}
