//! From a defect to the next driver's signature.

use crate::EntryId;

choice! {
    /// What the shop certifies.
    pub enum RepairVerdict {
        /// It was repaired.
        #[n(0)] Repaired,
        /// Repair is not needed.
        #[n(1)] NotNeeded,
    }
}

record! {
    /// Which defect: the entry that first found it, and the line.
    #[derive(Eq, PartialOrd, Ord, Hash)]
    pub struct DefectName {
        /// The entry with the finding.
        #[n(0)] pub entry: EntryId,
        /// The item.
        #[n(1)] pub item: String,
        /// Its place.
        #[n(2)] pub place: Option<String>,
    }

    /// The shop's certificate for one defect.
    pub struct Certificate {
        /// The defect.
        #[n(0)] pub defect: DefectName,
        /// What is certified.
        #[n(1)] pub verdict: RepairVerdict,
        /// In whose words, and why.
        #[n(2)] pub words: String,
    }

    /// A driver read what the last report left and what was certified.
    pub struct Review {
        /// Certificates that were read.
        #[n(0)] pub certificates: Vec<EntryId>,
        /// The last report that was read, when there was one.
        #[n(1)] pub report: Option<EntryId>,
    }
}

impl DefectName {
    /// Of one place at most one defect is open, whichever entry found it first.
    pub fn is_same_place(&self, other: &DefectName) -> bool {
        (&self.item, &self.place) == (&other.item, &other.place)
    }
}
