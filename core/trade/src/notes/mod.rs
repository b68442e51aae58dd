//! What a unit's display said, who acted on it, and whether it went away by itself.

mod acknowledged;
mod reminder;

pub use acknowledged::{Ack, Acknowledged, Note, NoteKind, acknowledged};
pub use reminder::{ClearedReminder, Sighting, cleared_without_service};
