//! Where a unit's pre-trip stands.

use sumpbook_daybook::screen::PreTripNow;
use sumpbook_trade::{EntryId, Stamp};

/// Where the pre-trip stands.
#[uniffi::remote(Enum)]
pub enum PreTripNow {
    /// None covers this moment.
    NotStarted,
    /// Begun on this phone, not signed.
    UnderWay {
        /// The draft.
        draft: EntryId,
        /// By whom.
        by: Option<String>,
        /// Label of the stop reached; none before the first.
        stop: Option<String>,
        /// That stop's place in the unit's own walk, 1 first; none of a draft that an older version kept.
        at: Option<u32>,
        /// Lines answered.
        answered: u32,
    },
    /// Signed, and it covers this moment.
    Covers {
        /// Its entry.
        entry: EntryId,
        /// By whom.
        by: Option<String>,
        /// Its signature.
        from: Stamp,
        /// Until when without an end-of-day report.
        to: Stamp,
        /// The person who asks has signed one that covers this moment.
        own: bool,
    },
    /// The day's work was reported as ended.
    Ended {
        /// The end-of-day report.
        entry: EntryId,
        /// By whom.
        by: Option<String>,
        /// When.
        at: Stamp,
    },
}
