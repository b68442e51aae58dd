//! What a finding locks, where the shop has it otherwise than the checklist.

use crate::checklist::Severity;

record! {
    /// What the shop made its own of the checklist. Each one set replaces the one before whole; what it does not name
    /// is as the checklist has it. An answer keeps what it locked when it was given.
    #[derive(Eq, Default)]
    pub struct SeveritiesSet {
        /// One for each word that the shop has otherwise.
        #[n(0)] pub own: Vec<OwnSeverity>,
    }

    /// What one word of one item locks in this fleet.
    #[derive(Eq)]
    pub struct OwnSeverity {
        /// The checklist's item: "mirrors".
        #[n(0)] pub item: String,
        /// Its word: "cracked".
        #[n(1)] pub word: String,
        /// What it locks.
        #[n(2)] pub severity: Severity,
        /// What it locks the second time within days, of a word that the checklist asks about again. None: as the
        /// checklist has it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(3)] pub again: Option<Severity>,
    }
}
