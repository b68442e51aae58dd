//! Taking something back without hiding it.

use crate::{EntryId, TruckId};

record! {
    /// An earlier entry is void. It stays visible.
    pub struct Correction {
        /// Which entry.
        #[n(0)] pub target: EntryId,
        /// Why.
        #[n(1)] pub why: String,
        /// The entry that says it right, when there is one.
        #[n(2)] pub instead: Option<EntryId>,
    }

    /// An earlier entry belongs to another unit: void here, anew there.
    pub struct OtherUnit {
        /// Which entry.
        #[n(0)] pub target: EntryId,
        /// The unit it belongs to.
        #[n(1)] pub unit: TruckId,
        /// The entry that was signed anew there.
        #[n(2)] pub anew: EntryId,
    }
}
