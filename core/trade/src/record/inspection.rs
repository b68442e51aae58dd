//! Looking at things before work and telling of them after it.

use super::{Digest, Glass};
use crate::checklist::Severity;
use crate::{EntryId, Figure, Unit, WalkId};

choice! {
    /// What was answered. Nothing is ever answered beforehand.
    pub enum AnswerKind {
        /// As it should be.
        #[n(0)] Ok,
        /// Something is wrong.
        #[n(1)] Defect,
        /// This unit has no such part.
        #[n(2)] NotFitted,
        /// It could not be looked at.
        #[n(3)] CouldNotCheck,
    }

    /// How a figure came.
    pub enum How {
        /// The screen asked for it.
        #[n(0)] Asked,
        /// Picked from a few by one tap.
        #[n(1)] Chosen,
        /// Measured by the phone's own timer.
        #[n(2)] Timed,
        /// Given without being asked for.
        #[n(3)] Offered,
        /// Said from memory.
        #[n(4)] Said,
    }
}

record! {
    /// A figure given with an answer.
    pub struct ItemFigure {
        /// The figure.
        #[n(0)] pub figure: Figure,
        /// How it came.
        #[n(1)] pub how: How,
    }

    /// The answer to one line of the checklist.
    pub struct Answer {
        /// The item's id in the template.
        #[n(0)] pub item: String,
        /// Which of its places, such as `left`.
        #[n(1)] pub place: Option<String>,
        /// What was answered.
        #[n(2)] pub answer: AnswerKind,
        /// The word chosen for a defect.
        #[n(3)] pub word: Option<String>,
        /// What a defect locks, from item and word; the driver may raise it, never lower it.
        #[n(4)] pub severity: Option<Severity>,
        /// Figures given.
        #[cbor(default)]
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[n(5)] pub figures: Vec<ItemFigure>,
        /// Milliseconds this line stood whole on the screen before it was answered.
        #[n(6)] pub on_screen_ms: Option<u32>,
        /// Lines with the same number here were answered together by one tap.
        #[n(7)] pub together: Option<u32>,
        /// The driver's own words, or why it could not be checked.
        #[n(8)] pub words: Option<String>,
        /// Photos, by SHA-256.
        #[cbor(default)]
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[n(9)] pub photos: Vec<Digest>,
        /// The noise a defect makes, as a clip of at most 10 s, by SHA-256; only of a defect.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(10)] pub sound: Option<Digest>,
    }

    /// Stops of one walk, signed by the one who looked.
    pub struct PreTripSection {
        /// The walk these stops belong to; two people can share one.
        #[n(0)] pub walk: WalkId,
        /// Edition of the checklist template.
        #[n(1)] pub edition: u32,
        /// Answers in the order they were given.
        #[n(2)] pub answers: Vec<Answer>,
        /// Seconds from the first stop to the signature.
        #[n(3)] pub seconds: Option<u32>,
        /// Whether this signature ends the walk.
        #[n(4)] pub complete: bool,
        /// The walk of the driver before, whose record was read: this one is the second driver's short one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[n(5)] pub follows: Option<EntryId>,
    }

    /// What the next driver will read.
    pub struct EndOfDay {
        /// Defects found today on truck or air; empty only with `none_found`.
        #[cbor(default)]
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[n(0)] pub defects: Vec<Answer>,
        /// The driver said that none was found.
        #[n(1)] pub none_found: bool,
        /// Odometer, as read.
        #[n(2)] pub odometer: Option<Figure>,
        /// Whether brake tanks were drained; none when not asked.
        #[n(3)] pub tanks_drained: Option<bool>,
        /// Words for the next driver.
        #[n(4)] pub to_next: Option<String>,
        /// Display notes the driver saw today.
        #[cbor(default)]
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[n(5)] pub notes_seen: Vec<EntryId>,
    }

    /// A page of paper was typed in at the shop: who typed it is the entry's person.
    pub struct PaperPage {
        /// The entry of whoever signed the page, written down from it.
        #[n(0)] pub signed: EntryId,
        /// The number printed or written on the page.
        #[n(1)] pub number: Option<String>,
        /// Edition of the checklist that the page has.
        #[n(2)] pub edition: u32,
        /// Which of the unit's own editions it has: 1 as it was first registered, one more with each change of
        /// what it has.
        #[n(3)] pub unit_edition: u32,
        /// A photo of the page.
        #[n(4)] pub photo: Option<Digest>,
    }
}

impl PreTripSection {
    /// Whether its signature ends a walk, so that it covers what comes after. One without an answer looked at nothing,
    /// whatever it says of itself.
    pub fn ends_the_walk(&self) -> bool {
        self.complete && !self.answers.is_empty()
    }

    /// Where the oil stood in the glass, as the walk's own line has it; none where nobody looked.
    pub fn glass(&self) -> Option<Glass> {
        let answer = self.answers.iter().find(|answer| answer.item == "oil-level")?;
        match answer.word.as_deref() {
            Some("below-view") => Some(Glass::BelowView),
            Some("above-view") => Some(Glass::AboveView),
            _ => {
                let figure = answer.figures.first()?.figure;
                let value = figure.value().round();
                let in_glass = figure.unit == Unit::Percent && (0.0..=100.0).contains(&value);
                in_glass.then_some(Glass::Percent(value as u8))
            }
        }
    }
}
