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
    /// It lies under what the rated delivery would allow, and how much air was made is not known: it may be over.
    LoadShareUnknown,
    /// Less than nothing was used, whatever two readings may be off: a level is wrong, or a pour is missing.
    LessThanNothing,
}

/// What a balance says of `limit`. Without a load share the limit is that of the rated delivery, the most air there can
/// have been: over it is over for certain, under it is not.
pub fn verdict(balance: &Balance, limit: MlPerHour, share_known: bool, numbers: &OilNumbers) -> OilVerdict {
    if balance.settling {
        return OilVerdict::None(NoVerdict::Settling);
    }
    if balance.hours().as_hours() < numbers.least_hours {
        return OilVerdict::None(NoVerdict::TooFewHours);
    }
    match balance.band() {
        None => OilVerdict::None(NoVerdict::GlassUnknown),
        Some((low, _)) if low > limit => OilVerdict::Over,
        Some((_, high)) if high < MlPerHour(0.0) => OilVerdict::None(NoVerdict::LessThanNothing),
        Some((_, high)) if high <= limit && !share_known => OilVerdict::None(NoVerdict::LoadShareUnknown),
        Some((_, high)) if high <= limit => OilVerdict::Under,
        Some(_) => OilVerdict::None(NoVerdict::BandTooWide),
    }
}
