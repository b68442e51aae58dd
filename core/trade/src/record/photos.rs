//! Which photos and sounds an entry names.

use super::{Answer, Digest, Fact};

impl Fact {
    /// The photos it names, by SHA-256, in the order they stand in it.
    pub fn photos(&self) -> Vec<Digest> {
        let of = |answers: &[Answer]| answers.iter().flat_map(|answer| &answer.photos).copied().collect();
        match self {
            Fact::PreTripSection(section) => of(&section.answers),
            Fact::EndOfDay(report) => of(&report.defects),
            Fact::LevelCheck(check) => check.photo.into_iter().collect(),
            Fact::HourReading(reading) => reading.photo.into_iter().collect(),
            Fact::DisplayNote(note) => note.photo.into_iter().collect(),
            Fact::PaperPage(page) => page.photo.into_iter().collect(),
            Fact::Happened(happened) => happened.photos.clone(),
            Fact::ServiceDone(service) => service.photo.into_iter().collect(),
            _ => Vec::new(),
        }
    }

    /// The sounds it names, by SHA-256, in the order they stand in it.
    pub fn sounds(&self) -> Vec<Digest> {
        let of = |answers: &[Answer]| answers.iter().filter_map(|answer| answer.sound).collect();
        match self {
            Fact::PreTripSection(section) => of(&section.answers),
            Fact::EndOfDay(report) => of(&report.defects),
            _ => Vec::new(),
        }
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    /// The records whose schema has a field that begins so.
    fn with_field<'a>(schema: &'a serde_json::Value, begins: &str) -> BTreeSet<&'a str> {
        let defined = schema["$defs"].as_object().unwrap();
        let has = |record: &serde_json::Value| {
            let fields = record["properties"].as_object();
            fields.is_some_and(|fields| fields.keys().any(|field| field.starts_with(begins)))
        };
        defined.iter().filter(|(_, record)| has(record)).map(|(name, _)| name.as_str()).collect()
    }

    #[test]
    fn no_record_with_a_photo_or_a_sound_is_forgotten_here() {
        let schema = schemars::schema_for!(Fact).to_value();
        let known =
            ["Answer", "DisplayNote", "Happened", "HourReading", "LevelCheck", "PaperPage", "ServiceDone"];
        assert_eq!(with_field(&schema, "photo"), known.into());
        assert_eq!(with_field(&schema, "sound"), ["Answer"].into());
    }
}
