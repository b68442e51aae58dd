//! What a person at the shop decides, by name.

use chrono::NaiveDate;

use super::Digest;
use crate::EntryId;
use crate::quantity::day;

choice! {
    /// What becomes of the targets.
    pub enum Verdict {
        /// They count.
        #[n(0)] Use,
        /// They do not count; they stay visible.
        #[n(1)] DoNotUse,
        /// They tell of one and the same service.
        #[n(2)] SameService,
        /// This reading stands; those it disputes do not count.
        #[n(3)] ReadingStands,
    }
}

record! {
    /// A decision about entries. One that has seen another replaces it.
    pub struct Decision {
        /// The entries decided about.
        #[n(0)] pub targets: Vec<EntryId>,
        /// What becomes of them.
        #[n(1)] pub verdict: Verdict,
        /// Why.
        #[n(2)] pub why: String,
    }

    /// Entries of a device that arrived after its revocation are taken as true.
    pub struct LateAccepted {
        /// Which entries.
        #[n(0)] pub targets: Vec<EntryId>,
        /// Why.
        #[n(1)] pub why: String,
    }

    /// A day's sheet was closed.
    pub struct SheetClosed {
        /// The day, of the yard.
        #[cbor(with = "day")]
        #[n(0)] pub day: NaiveDate,
        /// 1 at the first closing; late arrivals make the next.
        #[n(1)] pub version: u32,
        /// The shop had entries up to this number.
        #[n(2)] pub upto: u64,
        /// SHA-256 over all heads of all books, in order.
        #[n(3)] pub heads: Digest,
        /// SHA-256 of the sheet as it was answered.
        #[n(4)] pub answer: Digest,
    }
}
