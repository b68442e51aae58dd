//! Which photos an entry names.

use super::{Answer, Digest, Fact};

impl Fact {
    /// The photos it names, by SHA-256, in the order they stand in it.
    pub fn photos(&self) -> Vec<Digest> {
        let of = |answers: &[Answer]| answers.iter().flat_map(|answer| &answer.photos).copied().collect();
        match self {
            Fact::PreTripSection(section) => of(&section.answers),
            Fact::EndOfDay(report) => of(&report.defects),
            Fact::LevelCheck(check) => check.photo.into_iter().collect(),
            Fact::DisplayNote(note) => note.photo.into_iter().collect(),
            Fact::ServiceDone(service) => service.photo.into_iter().collect(),
            _ => Vec::new(),
        }
    }
}
