//! What is wrong with a line, and what to do about it.

use sumpbook_trade::EntryId;

use super::{AnswerError, NotSeen, ReturnLineError, StepsError};

/// Why a line is no entry. Nothing of it was recorded.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum LineError {
    /// It is not JSON.
    #[error("this line is not JSON: {0}. Write one object on one line.")]
    NotJson(String),
    /// It is JSON and not an object.
    #[error("this line is not a JSON object. Begin it with '{{' and name its fields.")]
    NotAnObject,
    /// A common field nobody knows.
    #[error("no entry has a field '{field}'. Fields are: {known}.")]
    UnknownField {
        /// As it was written.
        field: String,
        /// The fields there are.
        known: String,
    },
    /// It does not say what it records.
    #[error("this line does not say what it records. Give \"kind\", one of: {0}.")]
    NoKind(String),
    /// A kind nobody knows.
    #[error("there is no kind of entry '{kind}'. Kinds are: {known}.")]
    UnknownKind {
        /// As it was written.
        kind: String,
        /// The kinds there are.
        known: String,
    },
    /// A field holds what it cannot hold.
    #[error("this line does not read as '{kind}': {why}. Correct it and give the line again.")]
    Shape {
        /// The kind it says it is.
        kind: String,
        /// Which field, and what it should hold.
        why: String,
    },
    /// No unit has this door number.
    #[error("no unit here is called '{door}'. Known are: {known}. Correct it, or register the unit first.")]
    UnknownUnit {
        /// As it was written.
        door: String,
        /// The door numbers there are.
        known: String,
    },
    /// Nobody has this name.
    #[error("nobody here is called '{name}'. Known are: {known}. Correct it, or add the person first.")]
    UnknownPerson {
        /// As it was written.
        name: String,
        /// The names there are.
        known: String,
    },
    /// Several people have this name.
    #[error("more than one person is called '{name}'. Give the person's id instead: {ids}.")]
    SeveralPeople {
        /// As it was written.
        name: String,
        /// Their ids.
        ids: String,
    },
    /// A kind that is about a unit, without one.
    #[error("'{0}' is about a unit. Give \"unit\" with its door number.")]
    UnitMissing(String),
    /// A matter of the whole fleet, with a unit.
    #[error("'{0}' is a matter of the whole fleet. Leave \"unit\" out.")]
    UnitTooMany(String),
    /// A time for what a phone records itself.
    #[error(
        "the phone's clock dates what a phone records. Leave \"at\" out, or give the \"source\" it came from: paper, invoice, estimate, brought-in or shop."
    )]
    TimeGiven,
    /// An end-of-day report must say one of two things.
    #[error("an end-of-day report names its defects or says \"none-found\": true, and never both.")]
    DefectsOrNone,
    /// An answer of the checklist does not hold.
    #[error(transparent)]
    Answer(#[from] AnswerError),
    /// Steps of a procedure do not hold.
    #[error(transparent)]
    Steps(#[from] StepsError),
    /// Lines of the list before a return to service do not hold.
    #[error(transparent)]
    Return(#[from] ReturnLineError),
    /// Nobody can have seen what it says.
    #[error(transparent)]
    NotSeen(#[from] NotSeen),
    /// It is larger than an entry may be.
    #[error(
        "this entry takes {bytes} bytes, and an entry has room for {most}. Shorten its words, or split it."
    )]
    TooLong {
        /// What it takes.
        bytes: usize,
        /// What there is room for.
        most: usize,
    },
    /// An id under which this device has recorded something else.
    #[error(
        "{0} is the id of another record of this phone. Nothing was recorded, and the first stands. Leave \"id\" out, or give one of its own."
    )]
    IdTaken(EntryId),
    /// Content of a "newer" kind that this version can read, or that is no content at all.
    #[error("what this line calls \"newer\" is a kind this version knows. Write it as that kind.")]
    NotNewer,
}
