//! What the unit's own display says, and who knows.

use super::Digest;
use crate::EntryId;

choice! {
    /// What kind of message stood there.
    pub enum NoteKind {
        /// A fault.
        #[n(0)] Fault,
        /// A warning.
        #[n(1)] Warning,
        /// A reminder of service.
        #[n(2)] Reminder,
    }
}

record! {
    /// The display showed something, or no longer does.
    pub struct DisplayNote {
        /// What kind.
        #[n(0)] pub what: NoteKind,
        /// As it stood there.
        #[n(1)] pub as_shown: String,
        /// The unit stopped by itself.
        #[n(2)] pub stopped_by_itself: Option<bool>,
        /// It is gone again; names the note it ends.
        #[n(3)] pub gone_again: Option<EntryId>,
        /// A photo of the display.
        #[n(4)] pub photo: Option<Digest>,
    }

    /// Someone answered a display note.
    pub struct Acknowledgement {
        /// The note.
        #[n(0)] pub note: EntryId,
        /// A person at the shop was told; otherwise it was only seen.
        #[n(1)] pub told_shop: bool,
    }
}
